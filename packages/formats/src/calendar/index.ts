export type { CalendarOptions } from './trade-calendar.js'
export { calledTrades, writeCalendar } from './trade-calendar.js'
export { callUid } from './uid.js'
