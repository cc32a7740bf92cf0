import { uniformFrom } from '@dawnlift/core/numeric'
import {
  type ClimateNormals,
  climateOfHours,
  replayNormals,
  usualUnrest,
  type WeatherHour,
} from '@dawnlift/core/weather'
import { horizonDays, jobWeatherFile, yearsOnRecord } from './job-weather.js'
import type { OpenedJob } from './open-job.js'

/** Courses of weather a campaign may meet, each made when it is asked for. */
export interface WeatherYears {
  /** Where they come from, in words. */
  readonly from: string
  readonly count: number
  /** The year, or its first `days`: the same weather, only not all of it. */
  readonly yearAt: (index: number, days?: number) => WeatherYear
}

export interface WeatherYear {
  readonly label: string
  readonly hours: readonly WeatherHour[]
}

/** Years on record that stand for themselves; with fewer, weather is drawn from their means. */
const enoughYears = 8

/** The years on record, if the job's file has enough of them; else `wanted` courses drawn from the climate's means. */
export function weatherYears(
  opened: OpenedJob,
  read: (name: string) => Uint8Array | undefined,
  wanted: number,
  seed: number,
): WeatherYears {
  const { site, calendar } = opened.job
  const climate = climateOf(opened, read)
  const { normals, years } = climate
  if (years.length >= enoughYears)
    return {
      from: `${years.length} years on record in ${climate.from}`,
      count: Math.min(wanted, years.length),
      yearAt: (index, days) => beginning(years[index]!, days),
    }
  return {
    from: `${wanted} courses of weather drawn from ${climate.from}`,
    count: wanted,
    yearAt: (index, days = horizonDays) => ({
      label: String(index + 1),
      hours: replayNormals(
        normals,
        site,
        calendar.firstDay,
        horizonDays,
        uniformFrom(seed + index),
        usualUnrest,
        days,
      ),
    }),
  }
}

const beginning = (year: WeatherYear, days: number | undefined): WeatherYear =>
  days === undefined ? year : { ...year, hours: year.hours.slice(0, days * 24) }

interface Climate {
  readonly from: string
  readonly normals: ClimateNormals
  /** Past years laid over the campaign's days; none where only means are known. */
  readonly years: readonly WeatherYear[]
}

function climateOf(opened: OpenedJob, read: (name: string) => Uint8Array | undefined): Climate {
  const { weather, job } = opened
  const { timeZone, name } = job.site
  if (weather.kind === 'normals') return { from: weather.normals.source, normals: weather.normals, years: [] }
  const file = jobWeatherFile(job, weather, read)
  const hours = file.ok ? file.value.hours : opened.hours
  const years = file.ok ? yearsOnRecord(file.value, job) : []
  return {
    from: years.length >= enoughYears ? weather.file : `the means of ${weather.file}`,
    normals: wholeYear(climateOfHours(name, weather.file, hours, timeZone), hours, timeZone),
    years: years.map(({ year, hours }) => ({ label: String(year), hours })),
  }
}

/**
 * Twelve months from those the hours cover. Months without an hour lie beyond the campaign's reach and take the nearest
 * known one, which only tints the days where the record ends.
 */
function wholeYear(known: ClimateNormals, hours: readonly WeatherHour[], zone: string): ClimateNormals {
  if (known.months.length === 12) return known
  const month = new Intl.DateTimeFormat('en-GB', { month: 'numeric', timeZone: zone })
  const covered = [...new Set(hours.map(hour => Number(month.format(hour.start * 1000)) - 1))].sort(
    (a, b) => a - b,
  )
  const apart = (a: number, b: number) => Math.min((a - b + 12) % 12, (b - a + 12) % 12)
  const months = Array.from({ length: 12 }, (_, wanted) => {
    const nearest = covered.reduce((best, each) => (apart(each, wanted) < apart(best, wanted) ? each : best))
    return known.months[covered.indexOf(nearest)]!
  })
  return { ...known, months }
}
