import type { CubicMetres, Instant, Seconds } from '../quantity/index.js'
import { type Ground, type Stand, volumePrinted } from './ground.js'
import { nextUsable, usableUntil } from './hour-table.js'
import { type FittedLift, fitLift } from './lift-reach.js'
import type { WorkDay } from './work-day.js'

/** A lift placed in a day, by section number. `below`: the layer it stands on. */
export interface PlacedLift extends FittedLift {
  readonly s: number
  readonly below: number
  /** Planned stops worked off just before the lift starts (lintels, inserts on the lift below). */
  readonly holdBefore: Seconds
}

export interface DayPlan {
  readonly day: WorkDay
  readonly shiftStart: Instant
  readonly shiftEnd: Instant
  readonly lifts: readonly PlacedLift[]
}

/** How tall a lift is asked for, given the section and the layer it starts on. */
export type Wish = (s: number, below: number) => number

/**
 * Moments at which the first lift of the day may start: when an open run begins, when a section has cured, and
 * the latest start that still has the shift reach the end of an open run. A shift in between loses time at one end.
 */
export function dayBegins(ground: Ground, day: WorkDay, stand: Stand): readonly Instant[] {
  const { setUp, washOut, longestShift } = ground.input.crew
  const earliest = day.opens + setUp
  const latest = day.closes - washOut
  const begins = new Set<Instant>()
  for (let at = nextUsable(ground.table, earliest, latest); at !== undefined; ) {
    const until = Math.min(latest, usableUntil(ground.table, at))
    begins.add(at)
    const stretched = until - (longestShift - setUp - washOut)
    if (stretched > earliest && stretched < latest) begins.add(stretched)
    for (const ready of stand.ready) if (ready > at && ready < until) begins.add(ready)
    at = until > at ? nextUsable(ground.table, until, latest) : undefined
  }
  return [...begins].sort((a, b) => a - b)
}

/**
 * Fills a day from `begin` on with sections in the order given, each as tall as wished and possible.
 * A section still curing lets the next one go first.
 */
export function fillDay(
  ground: Ground,
  stand: Stand,
  day: WorkDay,
  begin: Instant,
  order: readonly number[],
  wish: Wish,
  start: Stand,
): DayPlan | undefined {
  const { washOut, setUp, longestShift, changeOver } = ground.input.crew
  const waiting = order.filter(s => stand.heights[s]! < ground.sections[s]!.layers)
  const lifts: PlacedLift[] = []
  let printed = volumePrinted(ground, stand, start)
  let free = begin
  let closing = day.closes - washOut
  let shiftStart = day.opens
  while (waiting.length > 0) {
    const isFirst = lifts.length === 0
    const from = isFirst ? Math.max(free, day.opens + setUp) : free + changeOver
    const pick = nextSection(ground, stand, waiting, from, closing)
    if (pick === undefined) break
    const s = waiting[pick]!
    waiting.splice(pick, 1)
    const placed = placeLift(ground, stand, day, s, from, isFirst ? undefined : closing, printed, wish)
    if (!placed) continue
    if (isFirst) {
      shiftStart = placed.start - setUp - placed.holdBefore
      closing = Math.min(day.closes, shiftStart + longestShift) - washOut
    }
    lifts.push(placed)
    printed += liftVolume(ground, placed)
    free = placed.ends.at(-1)!
  }
  return lifts.length > 0
    ? stretchLast(ground, { day, shiftStart, shiftEnd: free + washOut, lifts }, printed)
    : undefined
}

/** Nobody waits for the nozzle after the last lift, so it gets as tall as it can whatever was wished. */
function stretchLast(ground: Ground, plan: DayPlan, printed: CubicMetres): DayPlan {
  const { washOut, longestShift } = ground.input.crew
  const last = plan.lifts.at(-1)!
  const closing = Math.min(plan.day.closes, plan.shiftStart + longestShift) - washOut
  const before = printed - liftVolume(ground, last)
  const taller = fitLift(ground, last.s, last.below, last.start, closing, before, Number.POSITIVE_INFINITY)
  if (!taller || taller.layers <= last.layers) return plan
  const lifts = [...plan.lifts.slice(0, -1), { ...last, ...taller }]
  return { ...plan, lifts, shiftEnd: taller.ends.at(-1)! + washOut }
}

/** Position in `waiting` of the first section that need not be waited for, else of the one soonest cured. */
function nextSection(
  ground: Ground,
  stand: Stand,
  waiting: readonly number[],
  from: Instant,
  closing: Instant,
): number | undefined {
  const soonest = nextUsable(ground.table, from, closing)
  if (soonest === undefined) return undefined
  let best = 0
  for (const [i, s] of waiting.entries()) {
    if (stand.ready[s]! <= soonest) return i
    if (stand.ready[s]! < stand.ready[waiting[best]!]!) best = i
  }
  return best
}

/** The lift of one section that can start soonest after `from`; a run too short for one layer is passed over. */
function placeLift(
  ground: Ground,
  stand: Stand,
  day: WorkDay,
  s: number,
  from: Instant,
  closingGiven: Instant | undefined,
  printed: CubicMetres,
  wish: Wish,
): PlacedLift | undefined {
  const { setUp, washOut, longestShift } = ground.input.crew
  const below = stand.heights[s]!
  const holdBefore = ground.sections[s]!.holdAfter[below]!
  const latest = closingGiven ?? day.closes - washOut
  const earliest = Math.max(from + (closingGiven === undefined ? 0 : holdBefore), stand.ready[s]!)
  let at = Math.max(earliest, closingGiven === undefined ? day.opens + setUp + holdBefore : earliest)
  for (;;) {
    const start = nextUsable(ground.table, at, latest)
    if (start === undefined) return undefined
    const closing = closingGiven ?? Math.min(day.closes, start - setUp - holdBefore + longestShift) - washOut
    const lift = fitLift(ground, s, below, start, closing, printed, wish(s, below))
    if (lift) return { ...lift, s, below, holdBefore }
    at = usableUntil(ground.table, start)
    if (at <= start) return undefined
  }
}

export function liftVolume(ground: Ground, lift: PlacedLift): CubicMetres {
  const { volumeBy } = ground.sections[lift.s]!
  return volumeBy[lift.below + lift.layers]! - volumeBy[lift.below]!
}

/** What stands after the day. */
export function standAfter(ground: Ground, stand: Stand, plan: DayPlan): Stand {
  const heights = [...stand.heights]
  const ready = [...stand.ready]
  for (const lift of plan.lifts) {
    heights[lift.s] = lift.below + lift.layers
    ready[lift.s] = lift.ends.at(-1)! + ground.cure
  }
  return { heights, ready }
}
