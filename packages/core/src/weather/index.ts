export type { HourSource, PrintHour, WeatherHour } from './site-hour.js'
