import { addDays, instantAt } from '../clock/index.js'
import type { Seconds } from '../quantity/index.js'
import type { WeatherHour } from './site-hour.js'

/** Past hours of one station, in any order of years. Stamps count in standard time, this far ahead of UTC. */
export interface WeatherHistory {
  readonly hours: readonly WeatherHour[]
  readonly utcOffset: Seconds
}

/** A past year's weather laid over the campaign's days. */
export interface ReplayedYear {
  readonly year: number
  readonly hours: readonly WeatherHour[]
}

/**
 * The weather of each past year over the days of a campaign, for risk: the same month, day and standard hour, re-dated.
 *
 * 29 February, where a year has none, repeats the 28th. A campaign across new year goes on in the following year, or, where
 * there is none (a typical year), in the same one again. Years that miss an hour of the window are left out.
 */
export function replayYears(
  history: WeatherHistory,
  zone: string,
  from: string,
  days: number,
): readonly ReplayedYear[] {
  const byStamp = new Map<number, WeatherHour>()
  for (const hour of history.hours) byStamp.set(Math.floor((hour.start + history.utcOffset) / 3600), hour)
  const years = [...new Set(history.hours.map(hour => yearOf(hour.start + history.utcOffset)))].sort(
    (a, b) => a - b,
  )
  const start = instantAt(from, 0, zone)
  const end = instantAt(addDays(from, days), 0, zone)
  const firstYear = yearOf(start + history.utcOffset)
  return years.flatMap(year => {
    const hours: WeatherHour[] = []
    for (let at = start; at < end; at += 3600) {
      const past = pastHour(byStamp, at + history.utcOffset, year, firstYear)
      if (!past) return []
      hours.push({ ...past, start: at, source: 'history' })
    }
    return [{ year, hours }]
  })
}

const yearOf = (local: number): number => new Date(local * 1000).getUTCFullYear()

function pastHour(
  byStamp: ReadonlyMap<number, WeatherHour>,
  local: number,
  year: number,
  firstYear: number,
): WeatherHour | undefined {
  const date = new Date(local * 1000)
  const at = (past: number) => byStamp.get(stampOf(past, date))
  const beyond = date.getUTCFullYear() - firstYear
  // After new year a single or last year has nothing: its own months come round again.
  return at(year + beyond) ?? (beyond > 0 ? at(year) : undefined)
}

function stampOf(year: number, date: Date): number {
  const leap =
    date.getUTCMonth() === 1 &&
    date.getUTCDate() === 29 &&
    new Date(Date.UTC(year, 1, 29)).getUTCMonth() !== 1
  const day = leap ? 28 : date.getUTCDate()
  return Math.floor(Date.UTC(year, date.getUTCMonth(), day, date.getUTCHours()) / 3_600_000)
}
