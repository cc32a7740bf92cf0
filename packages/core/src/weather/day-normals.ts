import type { Celsius, MetresPerSecond } from '../quantity/index.js'
import type { ClimateNormals, MonthNormals, SkyNormals } from './climate-normals.js'

/** A month's means brought to one day of the year. */
export interface DayNormals {
  readonly airMost: Celsius
  readonly airLeast: Celsius
  readonly dewPoint: Celsius
  readonly wind: MetresPerSecond
  /** Chance that the day is wet, and the rain of a wet day [mm]. */
  readonly wetChance: number
  readonly wetDayMm: number
  readonly sky: SkyNormals
}

const MONTH_DAYS = [31, 28.2425, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

/** The normals as a function of the calendar date `2026-07-14`. */
export function dayNormals(normals: ClimateNormals): (date: string) => DayNormals {
  const temperature = (key: 'airMost' | 'airLeast' | 'dewPoint') =>
    controlPoints(normals.months.map(month => month[key]))
  const airMost = temperature('airMost')
  const airLeast = temperature('airLeast')
  const dew = temperature('dewPoint')
  const wind = normals.months.map(month => month.wind)
  const chance = normals.months.map((month, index) => month.rainDays / MONTH_DAYS[index]!)
  const sky = skyOfDay(normals.months)
  return date => {
    const month = normals.months[Number(date.slice(5, 7)) - 1]!
    const at = (values: readonly number[]) => betweenMonths(values, date)
    return {
      airMost: at(airMost),
      airLeast: Math.min(at(airLeast), at(airMost)),
      dewPoint: at(dew),
      wind: at(wind),
      wetChance: at(chance),
      wetDayMm: month.rainDays > 0 ? month.rainMm / month.rainDays : 0,
      sky: sky(date),
    }
  }
}

/**
 * Values at mid-month whose straight lines have the given monthly means.
 *
 * Straight lines between the means themselves would clip every summer and fill every winter: a month's mean over such lines
 * is (before + 6·own + after)/8. Repeated correction by what is missing converges fourfold each time.
 */
function controlPoints(means: readonly number[]): readonly number[] {
  let points = [...means]
  for (let round = 0; round < 30; round += 1)
    points = points.map((own, index) => {
      const reached = (points[(index + 11) % 12]! + 6 * own + points[(index + 1) % 12]!) / 8
      return own + means[index]! - reached
    })
  return points
}

/** Straight line between the middles of months, round the year. */
function betweenMonths(values: readonly number[], date: string): number {
  const month = Number(date.slice(5, 7)) - 1
  const share = (Number(date.slice(8, 10)) - 0.5) / Math.round(MONTH_DAYS[month]!) - 0.5
  const other = (month + (share < 0 ? 11 : 1)) % 12
  const weight = Math.abs(share)
  return values[month]! * (1 - weight) + values[other]! * weight
}

/** The sky as a function of the date. A table may change its kind from month to month: then each month keeps its own value. */
function skyOfDay(months: readonly MonthNormals[]): (date: string) => SkyNormals {
  const skies = months.map(({ sky }) => sky)
  const kinds = new Set(skies.map(({ kind }) => kind))
  if (kinds.size > 1) return date => skies[Number(date.slice(5, 7)) - 1]!
  const values = controlPoints(skies.map(sky => (sky.kind === 'global' ? sky.megajoulesPerDay : sky.cover)))
  return kinds.has('global')
    ? date => ({ kind: 'global', megajoulesPerDay: Math.max(0, betweenMonths(values, date)) })
    : date => ({ kind: 'cloud', cover: Math.max(0, Math.min(1, betweenMonths(values, date))) })
}
