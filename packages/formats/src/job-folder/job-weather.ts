import { addDays, instantAt, zoneOffset } from '@dawnlift/core/clock'
import type { Job } from '@dawnlift/core/job'
import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import {
  checkStation,
  hoursFromNormals,
  mergeHours,
  replayYears,
  type WeatherHour,
} from '@dawnlift/core/weather'
import type { JobWeather } from '@dawnlift/document/job'
import {
  type HourlyMapping,
  readHourlyCsv,
  readUnit,
  readWeather,
  type WeatherFile,
  type WeatherQuantity,
  weatherUnits,
} from '../weather/index.js'
import { bridgeGaps, closedOnItself } from './bridge-gaps.js'
import { type NotedHours, withForecast } from './job-forecast.js'
import { keptLast } from './kept-last.js'

/** Days of weather a campaign may reach into from its first day on. */
export const horizonDays = 240

type ReadFile = (name: string) => Uint8Array | undefined

/** Weather for every hour from the first day on: the forecast beside the job over what is known without it. */
export function jobHours(job: Job, weather: JobWeather, read: ReadFile): Result<NotedHours> {
  const known = knownHours(job, weather, read)
  const { forecast } = weather
  return known.ok && forecast !== undefined
    ? success(withForecast(known.value, job, forecast, read(forecast), horizonDays))
    : known
}

const keptHours = keptLast<Result<NotedHours>>()

/** The job's file laid over the campaign's days, or its normals. */
function knownHours(job: Job, weather: JobWeather, read: ReadFile): Result<NotedHours> {
  const content = weather.kind === 'file' ? read(weather.file) : undefined
  const text = JSON.stringify([weather, job.site, job.calendar.firstDay, job.units])
  return keptHours({ text, content }, () => readHours(job, weather, read))
}

function readHours(job: Job, weather: JobWeather, read: ReadFile): Result<NotedHours> {
  if (weather.kind === 'normals') {
    return success({
      hours: hoursFromNormals(weather.normals, job.site, job.calendar.firstDay, horizonDays),
      notes: [],
    })
  }
  const file = jobWeatherFile(job, weather, read)
  if (!file.ok) return file
  const hours = overCampaign(file.value, job)
  if (hours.length > 0)
    return success({ hours, notes: [...file.value.warnings, ...stationNotes(file.value, job, weather.file)] })
  return failure([
    {
      code: 'weather/no-cover',
      at: weather.file,
      say: `${weather.file} holds no hours for the days from ${job.calendar.firstDay} on: give a file that covers them, a whole year of any date, or monthly normals.`,
    },
  ])
}

/** The weather file beside a job, read as the job says it is to be read. */
export function jobWeatherFile(
  job: Job,
  weather: JobWeather & { readonly kind: 'file' },
  read: ReadFile,
): Result<WeatherFile> {
  const content = read(weather.file)
  if (!content) return failure([missing(weather.file)])
  const file = readFileAs(weather, new TextDecoder().decode(content), job)
  return file.ok ? success(bridgeGaps(file.value, weather.file)) : file
}

function readFileAs(
  weather: JobWeather & { readonly kind: 'file' },
  text: string,
  job: Job,
): Result<WeatherFile> {
  if (weather.format !== 'csv') return readWeather(text, weather.file)
  const mapping = hourlyMapping(weather.columns, job.site.timeZone)
  const station = {
    name: weather.source,
    latitude: job.site.latitude,
    longitude: job.site.longitude,
    elevation: job.site.elevation,
  }
  const file = mapping.ok ? readHourlyCsv(text, weather.file, station, mapping.value, 'history') : mapping
  return file.ok ? success({ ...file.value, utcOffset: dayBegins(file.value, job.site.timeZone) }) : file
}

/**
 * Seconds that a table's days begin before those of UTC: the standard time of the site where its first hour is the site's
 * midnight, else none. Its years are cut there, and a year cut elsewhere would miss an hour.
 */
function dayBegins({ hours }: WeatherFile, zone: string): number {
  const first = hours[0]?.start ?? 0
  const halfYear = 182 * 86400
  const standard = Math.min(zoneOffset(first, zone), zoneOffset(first + halfYear, zone))
  // A file of hours by their ends may begin at one o'clock.
  return (first + standard) % 86400 <= 3600 ? standard : 0
}

/** Each year of a file laid over the campaign's days. */
export const yearsOnRecord = ({ hours, utcOffset }: WeatherFile, { site, calendar }: Job) =>
  replayYears({ hours: closedOnItself(hours), utcOffset }, site.timeZone, calendar.firstDay, horizonDays)

/** Hours of the campaign itself where the file has them: measured, and over any forecast; else the file's year, re-dated. */
function overCampaign(file: WeatherFile, job: Job): readonly WeatherHour[] {
  const zone = job.site.timeZone
  const start = instantAt(job.calendar.firstDay, 0, zone)
  const end = instantAt(addDays(job.calendar.firstDay, horizonDays), 0, zone)
  const own = file.hours
    .filter(hour => hour.start >= start - 86400 && hour.start < end)
    .map(hour => ({ ...hour, source: 'measured' as const }))
  const year = yearsOnRecord(file, job).at(-1)
  return mergeHours([own, year?.hours ?? []])
}

/** `air: "Temp °C"`: the heading of the column, then its unit; `time: "Date UTC"` names the zone instead. */
function hourlyMapping(columns: Readonly<Record<string, string>>, zone: string): Result<HourlyMapping> {
  const problems: Problem[] = []
  const mapped: Partial<Record<WeatherQuantity, { column: string; unit: string }>> = {}
  for (const [name, words] of Object.entries(columns)) {
    if (name === 'time') continue
    const at = words.lastIndexOf(' ')
    const [column, unit] = at < 0 ? [words, '1'] : [words.slice(0, at), words.slice(at + 1)]
    if (name in weatherUnits && readUnit(name as WeatherQuantity, unit))
      mapped[name as WeatherQuantity] = { column, unit }
    else {
      const known =
        name in weatherUnits
          ? `units known for ${name}: ${Object.keys(weatherUnits[name as WeatherQuantity]).join(', ')}`
          : `readings known: ${Object.keys(weatherUnits).join(', ')}`
      problems.push({
        code: 'weather/column',
        at: `weather.columns.${name}`,
        say: `“${words}” is no column with its unit; ${known}. Write the heading, a space, then the unit.`,
      })
    }
  }
  const time = columns.time
  if (!time)
    problems.push({
      code: 'weather/no-time',
      at: 'weather.columns.time',
      say: 'A table needs a column with date and time: write time: "HEADING".',
    })
  return problems.length > 0 || !time
    ? failure(problems)
    : success({ time: { column: time, marks: 'start', zone }, columns: mapped })
}

/** A station too far from the site, or too high above it, has another weather. */
const stationNotes = ({ station }: WeatherFile, { site, units }: Job, name: string): readonly Problem[] =>
  checkStation(station, site, units).map(({ say }) => ({ code: 'weather/station', at: name, say }))

const missing = (name: string): Problem => ({
  code: 'job/no-file',
  at: name,
  say: `The job names ${name}, but there is no such file beside it (or it is larger than 100 MB). Put it into the job's folder, or take the name out.`,
})
