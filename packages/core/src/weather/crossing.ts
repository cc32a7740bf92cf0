import { isBeyond, type Limit, type LimitKind, marginOf } from '../limit/index.js'
import type { Instant } from '../quantity/index.js'
import { CIVIL_DEGREES } from './daylight.js'
import type { PrintHour } from './site-hour.js'

/** A stretch of time in which one may print, and the limits that end it; none where the hours end. */
export interface OpenSpan {
  readonly from: Instant
  readonly until: Instant
  readonly endedBy?: Limit
}

/** What is known of an hour only as a whole: such a limit is passed as the hour changes. */
const whole: ReadonlySet<LimitKind> = new Set(['rain', 'gust'])

const CIVIL = (CIVIL_DEGREES * Math.PI) / 180

/**
 * Moment at which a limit is passed between two neighbouring hours of which it holds in one only; none where they are no neighbours or
 * it holds in both or neither.
 *
 * The figures of an hour are its means and stand for its middle; between two middles they go straight. So the moment lies up to half an
 * hour before or after the change of hours. Daylight follows the sun's height, permitted hours the clock. Rain and gusts are
 * known by the whole hour and change with it.
 *
 *   t = middle + 3600·m/(m − m′)   with the margins m and m′ of the two hours
 *
 * Source   linear interpolation, closed form.
 * Range    hours that follow each other.
 * Scatter  a few minutes on a clear morning: a mean bends within its hour; where weather changes suddenly the half hour itself.
 * Assumes  the margin goes one way between the two middles.
 */
export function crossingBetween(before: PrintHour, after: PrintHour, kind: LimitKind): Instant | undefined {
  if (after.start - before.start !== 3600) return undefined
  const [was, is] = [limitInUse(before, kind), limitInUse(after, kind)]
  if (!was || !is || isBeyond(was) === isBeyond(is)) return undefined
  if (whole.has(kind)) return after.start
  // The permitted minutes of an hour lie at its beginning where the time ends, at its end where it begins.
  if (kind === 'permitted-hours') return after.start + 60 * (isBeyond(is) ? is.capacity : -was.capacity)
  const [m, n] =
    kind === 'daylight'
      ? [before.sunAltitude - CIVIL, after.sunAltitude - CIVIL]
      : [marginOf(was), marginOf(is)]
  return before.start + 1800 + 3600 * Math.max(0, Math.min(1, m / (m - n)))
}

/** When printing ends between an open hour and the closed one after it, and by which limit: the first that is passed. */
export function closingBetween(
  before: PrintHour,
  after: PrintHour,
): { readonly at: Instant; readonly limit: Limit } | undefined {
  return closingLimits(after)
    .flatMap(limit => {
      const at = crossingBetween(before, after, limit.kind)
      return at === undefined ? [] : [{ at, limit }]
    })
    .reduce<{ at: Instant; limit: Limit } | undefined>((a, b) => (a && a.at <= b.at ? a : b), undefined)
}

/** When printing begins between a closed hour and the open one after it: when the last limit lets go. */
export function openingBetween(before: PrintHour, after: PrintHour): Instant | undefined {
  const moments = closingLimits(before).flatMap(({ kind }) => crossingBetween(before, after, kind) ?? [])
  return moments.length > 0 ? Math.max(...moments) : undefined
}

/**
 * The stretches in which one may print, to the minute: each run of open hours from where the last limit lets go to where the first is
 * passed. The chiller counts where the job has one.
 */
export function openSpans(hours: readonly PrintHour[]): readonly OpenSpan[] {
  const spans: OpenSpan[] = []
  let from: Instant | undefined
  hours.forEach((hour, index) => {
    if (closingLimits(hour).length > 0) return
    const [before, after] = [neighbour(hours, index, -1), neighbour(hours, index, 1)]
    from ??= (before && openingBetween(before, hour)) ?? hour.start
    if (after && closingLimits(after).length === 0) return
    const closing = after && closingBetween(hour, after)
    spans.push({
      from,
      until: closing?.at ?? hour.start + 3600,
      ...(closing ? { endedBy: { ...closing.limit, at: closing.at } } : {}),
    })
    from = undefined
  })
  return spans
}

/** A limit of an hour, the chiller at work if there is one. */
export function limitInUse(hour: PrintHour, kind: LimitKind): Limit | undefined {
  const limit = hour.limits.find(each => each.kind === kind)
  return limit && chilled(hour, limit)
}

/** The limits that close an hour, the chiller at work if there is one. */
const closingLimits = (hour: PrintHour): readonly Limit[] =>
  hour.limits.map(limit => chilled(hour, limit)).filter(isBeyond)

const chilled = (hour: PrintHour, limit: Limit): Limit =>
  limit.kind === 'mix-hot' && hour.mixTemperatureChilled !== undefined
    ? { ...limit, demand: Math.min(limit.demand, hour.mixTemperatureChilled) }
    : limit

function neighbour(hours: readonly PrintHour[], index: number, step: 1 | -1): PrintHour | undefined {
  const [hour, other] = [hours[index]!, hours[index + step]]
  return other && other.start - hour.start === step * 3600 ? other : undefined
}
