import { isBeyond } from '@dawnlift/core/limit'
import { openSpans, type PrintHour } from '@dawnlift/core/weather'
import { line, type Mark } from '../paper/index.js'
import { band, type Dial, hoursNear, hoursOf, rings } from './day-clock-dial.js'
import type { DayClockParts } from './day-clock-list.js'

/** Open stretches are filled and framed, to the minute; what is shut carries a line across, so that it is told without colour. */
export function openRing(parts: DayClockParts, dial: Dial, midnight: number): Mark[] {
  const spans = openSpans(hoursNear(parts, midnight))
  return hoursOf(parts, midnight).flatMap(hour => {
    const end = hour.start + 3600
    const open = spans
      .map(({ from, until }) => ({ from: Math.max(from, hour.start), until: Math.min(until, end) }))
      .filter(({ from, until }) => until - from > 60)
    const edges = [hour.start, ...open.flatMap(({ from, until }) => [from, until]), end]
    const shut = edges.flatMap((from, index) =>
      index % 2 === 0 && edges[index + 1]! - from > 60 ? [{ from, until: edges[index + 1]! }] : [],
    )
    return [
      ...open.map(({ from, until }) =>
        band(dial, from, until, rings.open, 'hair', 'open', undefined, 'open'),
      ),
      ...shut.flatMap(({ from, until }) => shutMarks(parts, dial, from, until, midnight)),
    ]
  })
}

/** Why it is shut is told by the nearest hour that is shut as a whole. */
function shutMarks(
  parts: DayClockParts,
  dial: Dial,
  from: number,
  until: number,
  midnight: number,
): readonly Mark[] {
  const away = (hour: PrintHour) => Math.abs(hour.start + 1800 - (from + until) / 2)
  const nearest = hoursNear(parts, midnight)
    .filter(hour => hour.limits.some(isBeyond))
    .reduce<PrintHour | undefined>((a, b) => (a && away(a) <= away(b) ? a : b), undefined)
  const over = (nearest?.limits ?? []).filter(isBeyond).map(limit => limit.kind)
  return [
    band(
      dial,
      from,
      until,
      rings.open,
      'hair',
      byClock(over) ? 'night' : 'shut',
      undefined,
      `shut: ${over.join(', ')}`,
    ),
    line([dial.point(from, rings.open[0]), dial.point(until, rings.open[1])], 'dimension'),
  ]
}

/** Shut by hours and daylight alone: nothing the weather could change. */
const byClock = (kinds: readonly string[]): boolean =>
  kinds.every(kind => ['permitted-hours', 'daylight', 'shift'].includes(kind))
