import { addDays, clockText, instantAt, localTime } from '@dawnlift/core/clock'
import type { Job } from '@dawnlift/core/job'
import type { Problem } from '@dawnlift/core/result'
import { checkCoverage, mergeHours, type WeatherHour } from '@dawnlift/core/weather'
import { isForecastOf, readForecast, storedForecast } from '../weather/index.js'

export interface NotedHours {
  readonly hours: readonly WeatherHour[]
  readonly notes: readonly Problem[]
}

/**
 * The forecast beside a job laid over its other weather. It is never fetched here: where it is missing, broken, or of
 * another place, the plan goes on without it and says so; where it ends within the campaign, that is marked.
 */
export function withForecast(
  known: NotedHours,
  job: Job,
  file: string,
  content: Uint8Array | undefined,
  days: number,
): NotedHours {
  const without = (say: string): NotedHours => ({
    ...known,
    notes: [...known.notes, { code: 'forecast/left-out', at: file, say }],
  })
  if (!content) return without(`There is no forecast in ${file}: planned without one.`)
  const text = new TextDecoder().decode(content)
  const stored = storedForecast(text)
  if (stored && !isForecastOf(stored.url, job.site))
    return without(`The forecast in ${file} is of another place: planned without it. Fetch it anew.`)
  const read = readForecast(stored ? stored.answer : parsed(text), job.site)
  if (!read.ok)
    return without(`${read.problems[0]?.say ?? 'The forecast cannot be read.'} Planned without it.`)
  const zone = job.site.timeZone
  const from = instantAt(job.calendar.firstDay, 0, zone)
  const until = instantAt(addDays(job.calendar.firstDay, days), 0, zone)
  const ahead = read.value.hours.filter(({ start }) => start + 3600 > from && start < until)
  if (ahead.length === 0)
    return without(
      `The forecast in ${file} holds no hour from ${job.calendar.firstDay} on: planned without it.`,
    )
  const hours = mergeHours([known.hours, ahead])
  const clock = (at: number) => `${localTime(at, zone).date} ${clockText(at, zone)}`
  return {
    hours,
    notes: [
      ...known.notes,
      ...read.value.warnings,
      {
        code: 'forecast/age',
        at: file,
        say: stored
          ? `Forecast fetched ${clock(stored.fetchedAt)}: it counts for less with every day since.`
          : `The forecast in ${file} does not say when it was fetched.`,
      },
      ...checkCoverage(hours, from, until, clock).map(({ say }) => ({
        code: 'weather/coverage',
        at: file,
        say,
      })),
    ],
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
