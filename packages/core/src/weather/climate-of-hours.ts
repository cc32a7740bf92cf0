import { localTime } from '../clock/index.js'
import type { ClimateNormals, MonthNormals } from './climate-normals.js'
import { dewPoint } from './psychrometrics.js'
import type { WeatherHour } from './site-hour.js'

/** Rain from which a day counts as wet [mm], as weather services count. */
const WET_DAY = 1

/** One day's figures. */
interface Day {
  readonly month: number
  most: number
  least: number
  dew: number
  wind: number
  rain: number
  joules: number
  hours: number
}

/**
 * A place's normals from its hours, one year or many. Months without a single hour are left out: `checkNormals` then says so.
 *
 * A day's highest and lowest are those of hourly values: a quarter of a kelvin inside what a thermometer would have marked.
 */
export function climateOfHours(
  place: string,
  source: string,
  hours: readonly WeatherHour[],
  zone: string,
): ClimateNormals {
  const days = [...daysOf(hours, zone).values()]
  const months = Array.from({ length: 12 }, (_, month) => days.filter(day => day.month === month))
  return { place, source, months: months.filter(month => month.length > 0).map(monthOf) }
}

function daysOf(hours: readonly WeatherHour[], zone: string): ReadonlyMap<string, Day> {
  const days = new Map<string, Day>()
  for (const hour of hours) {
    const { date } = localTime(hour.start, zone)
    const day = days.get(date) ?? emptyDay(Number(date.slice(5, 7)) - 1)
    days.set(date, day)
    day.most = Math.max(day.most, hour.air)
    day.least = Math.min(day.least, hour.air)
    day.dew += dewPoint(hour.air, hour.humidity)
    day.wind += hour.wind
    day.rain += hour.rain
    day.joules += hour.global * 3600
    day.hours += 1
  }
  return days
}

const emptyDay = (month: number): Day => ({
  month,
  most: Number.NEGATIVE_INFINITY,
  least: Number.POSITIVE_INFINITY,
  dew: 0,
  wind: 0,
  rain: 0,
  joules: 0,
  hours: 0,
})

function monthOf(days: readonly Day[]): MonthNormals {
  const sum = (value: (day: Day) => number) => days.reduce((total, day) => total + value(day), 0)
  const hours = sum(day => day.hours)
  const lengthOfMonth = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][days[0]!.month]!
  // Parts of days at the ends of a file count by their hours.
  const perMonth = (total: number) => (total / (hours / 24)) * lengthOfMonth
  return {
    airMost: sum(day => day.most) / days.length,
    airLeast: sum(day => day.least) / days.length,
    dewPoint: sum(day => day.dew) / hours,
    wind: sum(day => day.wind) / hours,
    rainDays: perMonth(days.filter(day => day.rain >= WET_DAY).length),
    rainMm: perMonth(sum(day => day.rain)),
    sky: { kind: 'global', megajoulesPerDay: sum(day => day.joules) / (hours / 24) / 1e6 },
  }
}
