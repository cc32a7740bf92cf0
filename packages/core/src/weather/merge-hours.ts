import type { Instant } from '../quantity/index.js'
import type { HourSource, WeatherHour } from './site-hour.js'

/** Which source wins for an hour that several know. */
export const sourceRank: Readonly<Record<HourSource, number>> = {
  measured: 3,
  forecast: 2,
  history: 1,
  normals: 0,
}

/**
 * One series from several: each hour from its best source, measured over forecast over history over normals. Each hour keeps
 * the name of its source, so that a forecast ending in mid-campaign shows. Series on other minutes of the hour (a zone half an
 * hour off) are first brought to those of the first one.
 */
export function mergeHours(series: readonly (readonly WeatherHour[])[]): readonly WeatherHour[] {
  const first = series.find(hours => hours.length > 0)
  if (!first) return []
  const phase = phaseOf(first[0]!.start)
  const best = new Map<Instant, WeatherHour>()
  for (const hours of series)
    for (const hour of alignHours(hours, phase)) {
      const known = best.get(hour.start)
      if (!known || sourceRank[hour.source] > sourceRank[known.source]) best.set(hour.start, hour)
    }
  return [...best.values()].sort((a, b) => a.start - b.start)
}

/** Hours brought to other minutes past the hour [s] by sharing neighbours by time; hours without their neighbour fall out. */
export function alignHours(hours: readonly WeatherHour[], phase: number): readonly WeatherHour[] {
  if (hours.length === 0 || phaseOf(hours[0]!.start) === phase) return hours
  const shift = (phase - phaseOf(hours[0]!.start) + 3600) % 3600
  return hours.flatMap((hour, index) => {
    const next = hours[index + 1]
    return next && next.start === hour.start + 3600 ? [blend(hour, next, shift / 3600)] : []
  })
}

/** A stretch of hours from one source. */
export interface SourceSpan {
  readonly source: HourSource
  readonly from: Instant
  readonly until: Instant
}

/** Where the weather comes from, stretch by stretch; a gap begins a new one. */
export function sourceSpans(hours: readonly WeatherHour[]): readonly SourceSpan[] {
  const spans: { source: HourSource; from: Instant; until: Instant }[] = []
  for (const { source, start } of hours) {
    const last = spans.at(-1)
    if (last && last.source === source && last.until === start) last.until = start + 3600
    else spans.push({ source, from: start, until: start + 3600 })
  }
  return spans
}

const phaseOf = (at: Instant): number => ((at % 3600) + 3600) % 3600

function blend(a: WeatherHour, b: WeatherHour, share: number): WeatherHour {
  const mix = (key: 'air' | 'humidity' | 'wind' | 'rain' | 'global' | 'beam' | 'diffuse' | 'pressure') =>
    a[key] * (1 - share) + b[key] * share
  return {
    start: a.start + share * 3600,
    air: mix('air'),
    humidity: mix('humidity'),
    wind: mix('wind'),
    // The new hour may hold either one's gust: the stronger is the safe one.
    gust: Math.max(a.gust, b.gust),
    rain: mix('rain'),
    global: mix('global'),
    beam: mix('beam'),
    diffuse: mix('diffuse'),
    pressure: mix('pressure'),
    source: sourceRank[a.source] < sourceRank[b.source] ? a.source : b.source,
  }
}
