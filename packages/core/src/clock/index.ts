export { isDate, momentAt, momentText } from './moment.js'
export type { LocalTime } from './zone.js'
export { addDays, clockText, instantAt, isTimeZone, localTime, weekday, zoneOffset } from './zone.js'
