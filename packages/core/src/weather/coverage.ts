import type { Instant } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { sourceSpans } from './merge-hours.js'
import type { HourSource, WeatherHour } from './site-hour.js'

const words: Readonly<Record<HourSource, string>> = {
  measured: 'measured on site',
  forecast: 'a forecast',
  history: 'past years',
  normals: 'climate normals',
}

/**
 * What the weather of a campaign rests on: one finding where a better source ends and a weaker one takes over, one for each gap, one where
 * the hours end before the campaign does. Source: common practice, no source.
 */
export function checkCoverage(
  hours: readonly WeatherHour[],
  from: Instant,
  until: Instant,
  clock: (at: Instant) => string,
): readonly Finding[] {
  const inside = hours.filter(hour => hour.start + 3600 > from && hour.start < until)
  const spans = sourceSpans(inside)
  const last = spans.at(-1)
  const changes = spans.slice(1).flatMap((span, index): readonly Finding[] => {
    const before = spans[index]!
    if (before.until !== span.from)
      return [
        warn(
          `There is no weather from ${clock(before.until)} to ${clock(span.from)}: hours without weather stay closed.`,
          span.from - before.until,
          0,
        ),
      ]
    return [
      warn(
        `Up to ${clock(span.from)} the weather is ${words[before.source]}, from there ${words[span.source]}: plan again when better is known.`,
        until - span.from,
        0,
      ),
    ]
  })
  const begin = spans[0]?.from ?? until
  return [
    ...(begin > from
      ? [warn(`The weather begins at ${clock(begin)}, the campaign at ${clock(from)}.`, begin - from, 0)]
      : []),
    ...changes,
    ...(last && last.until < until
      ? [
          warn(
            `The weather ends at ${clock(last.until)}, before the campaign does: hours beyond stay closed.`,
            until - last.until,
            0,
          ),
        ]
      : []),
  ]
}

const warn = (say: string, demand: number, capacity: number): Finding => ({
  check: 'weather-coverage',
  at: 'weather',
  demand,
  capacity,
  unit: 's',
  source: 'common practice, no source',
  verdict: 'warn',
  say,
})
