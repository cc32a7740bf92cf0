import { isBeyond, type Limit } from '../limit/index.js'
import type { Celsius, Instant, Seconds } from '../quantity/index.js'
import { type OpenSpan, openSpans, type PrintHour } from '../weather/index.js'
import type { LiftPhysics } from './campaign.js'

const HOUR = 3600

/** Tolerance on clock comparisons [s]: far below a tap on the screen, far above rounding of instants. */
export const TICK = 1e-3

/** Hours by their number, ready for quick questions. `use`: 0 closed, 1 open, 2 open with chilled water. */
export interface HourTable {
  readonly first: Instant
  readonly count: number
  readonly hours: readonly (PrintHour | undefined)[]
  readonly use: Uint8Array
  /** Stretches in which one may print, to the minute, in order. */
  readonly spans: readonly OpenSpan[]
  readonly temperature: Float64Array
  /** Longest rest of a layer laid in this hour [s], asked of the physics once an hour. */
  readonly rest: (hour: number) => { readonly seconds: Seconds; readonly limit: Limit }
}

const tables = new WeakMap<readonly PrintHour[], HourTable & { readonly asked: LiftPhysics['longestRest'] }>()

/** Made once for the same list of hours and the same rests. */
export function hourTable(
  hours: readonly PrintHour[],
  { longestRest }: Pick<LiftPhysics, 'longestRest'>,
): HourTable {
  const known = tables.get(hours)
  if (known?.asked === longestRest) return known
  const made = { ...newTable(hours, longestRest), asked: longestRest }
  tables.set(hours, made)
  return made
}

function newTable(hours: readonly PrintHour[], longestRest: LiftPhysics['longestRest']): HourTable {
  const first = hours[0]?.start ?? 0
  const last = hours.at(-1)?.start ?? first - HOUR
  const count = Math.max(0, Math.round((last - first) / HOUR) + 1)
  const table: (PrintHour | undefined)[] = new Array(count).fill(undefined)
  for (const hour of hours) table[Math.round((hour.start - first) / HOUR)] = hour
  const use = Uint8Array.from(table, hour => (hour ? hourUse(hour) : 0))
  const temperature = Float64Array.from(table, (hour, i) => (hour ? mixIn(hour, use[i] === 2) : Number.NaN))
  const rests = new Map<number, { seconds: Seconds; limit: Limit }>()
  const rest = (hour: number) => {
    const known = rests.get(hour)
    if (known) return known
    const asked = longestRest(first + hour * HOUR)
    rests.set(hour, asked)
    return asked
  }
  return { first, count, hours: table, use, spans: openSpans(hours), temperature, rest }
}

/** Number of the hour a moment lies in; may lie outside the table. */
export const hourOf = (table: HourTable, at: Instant): number => Math.floor((at - table.first) / HOUR + 1e-9)

/**
 * Whether the hour is open as it is (1), with chilled water (2), or closed (0). Hours of a job with a chiller may be
 * called open already with the chiller at work; a tap-water mix over its limit shows that it is.
 */
export function hourUse(hour: PrintHour): 0 | 1 | 2 {
  const hot = hour.limits.find(limit => limit.kind === 'mix-hot')
  const cold = hour.mixTemperatureChilled
  const needsChiller = cold !== undefined && hot !== undefined && hour.mixTemperature > hot.capacity
  if (hour.open) return needsChiller ? 2 : 1
  return needsChiller && limitsBeyond(hour).length === 0 ? 2 : 0
}

/** Mix in the hour; chilled only as far as the limit asks. */
function mixIn(hour: PrintHour, isChilled: boolean): Celsius {
  const hot = hour.limits.find(limit => limit.kind === 'mix-hot')
  if (!isChilled || hour.mixTemperatureChilled === undefined || !hot) return hour.mixTemperature
  return Math.max(hour.mixTemperatureChilled, Math.min(hour.mixTemperature, hot.capacity))
}

/** The limits that close an hour, the chiller at work if there is one. Empty when the hour can be printed in. */
export function limitsBeyond(hour: PrintHour): readonly Limit[] {
  const beyond = hour.limits.map(limit => withChiller(hour, limit)).filter(isBeyond)
  return beyond.map(limit => ({ ...limit, at: limit.at ?? hour.start }))
}

function withChiller(hour: PrintHour, limit: Limit): Limit {
  const chilled = hour.mixTemperatureChilled
  return limit.kind === 'mix-hot' && chilled !== undefined
    ? { ...limit, demand: Math.min(limit.demand, chilled) }
    : limit
}

/** First moment at or after `from` at which one may print, if there is one before `until`. */
export function nextUsable(table: HourTable, from: Instant, until: Instant): Instant | undefined {
  const span = table.spans[spanAfter(table, from)]
  if (!span) return undefined
  const at = Math.max(from, span.from)
  return at < until ? at : undefined
}

/** End of the open stretch that `at` lies in; `at` itself when it lies in none. */
export const usableUntil = (table: HourTable, at: Instant): Instant => openSpanAt(table, at)?.until ?? at

/** The open stretch a moment lies in, with what ends it. */
export function openSpanAt(table: HourTable, at: Instant): OpenSpan | undefined {
  const span = table.spans[spanAfter(table, at)]
  return span && span.from <= at ? span : undefined
}

/** Number of the first stretch that ends after a moment. */
function spanAfter({ spans }: HourTable, at: Instant): number {
  let [low, high] = [0, spans.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (spans[middle]!.until > at + TICK) high = middle
    else low = middle + 1
  }
  return low
}
