import type { CubicMetres, Instant, Seconds } from '../quantity/index.js'
import { type Ground, isOpen, type Stand, volumePrinted } from './ground.js'
import { nextUsable, usableUntil } from './hour-table.js'
import { type FittedLift, fitLift } from './lift-reach.js'
import { pinnedWish } from './pins.js'
import { delayLifts, delayNeeded, roomToDelay } from './shift-delay.js'
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

/** Lifts already placed in fillings of the same day that began alike. */
export type KnownFillings = Map<string, readonly PlacedLift[] | undefined>

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
 * A section still curing lets the next one go first; the last lift gets as tall as it can whatever was wished,
 * unless it is to be as wished.
 */
export function fillDay(
  ground: Ground,
  stand: Stand,
  day: WorkDay,
  begin: Instant,
  order: readonly number[],
  wish: Wish,
  start: Stand,
  known: KnownFillings = new Map(),
  lastAs: 'wished' | 'tallest' = 'tallest',
): DayPlan | undefined {
  const { setUp, changeOver } = ground.input.crew
  const waiting = order.filter(s => isOpen(ground, stand, s, day.date))
  const before = volumePrinted(ground, stand, start)
  const most = (s: number) => mostLayers(ground, stand, s)
  let lifts: readonly PlacedLift[] = []
  let done = `${begin}`
  let lastWish = 0
  while (waiting.length > 0) {
    const last = lifts.at(-1)
    const from = last ? last.ends.at(-1)! + changeOver : Math.max(begin, day.opens + setUp)
    const pick = nextSection(ground, stand, waiting, from, day.closes)
    if (pick === undefined) break
    const s = waiting.splice(pick, 1)[0]!
    const wished = Math.min(wish(s, stand.heights[s]!), most(s))
    const next = `${done} ${s}:${wished}`
    if (!known.has(next)) {
      const printed = before + printedIn(ground, lifts)
      known.set(next, placeLift({ ground, stand, day, s, from, lifts, printed }, wished))
    }
    const placed = known.get(next)
    if (!placed) continue
    lifts = placed
    done = next
    lastWish = wished
  }
  if (lifts.length === 0) return undefined
  // A lift stopped by anything but the wish gets no taller.
  const isWished = lastAs === 'tallest' && lifts.at(-1)!.layers >= lastWish
  return closeDay(ground, day, isWished ? withTallestLast(ground, stand, day, lifts, before) : lifts)
}

/** Nobody waits for the nozzle after the last lift. */
function withTallestLast(
  ground: Ground,
  stand: Stand,
  day: WorkDay,
  lifts: readonly PlacedLift[],
  before: CubicMetres,
): readonly PlacedLift[] {
  const last = lifts.at(-1)!
  const most = mostLayers(ground, stand, last.s)
  if (last.layers >= most) return lifts
  const earlier = lifts.slice(0, -1)
  const printed = before + printedIn(ground, earlier)
  const place = { ground, stand, day, s: last.s, from: last.start, lifts: earlier, printed }
  const tallest = placeAt(place, last.start, last.holdBefore, most)
  return tallest && tallest.at(-1)!.layers > last.layers ? tallest : lifts
}

/** Most layers a section's next lift may have by the rule, its lift ends and the lead's pins. */
export function mostLayers(ground: Ground, stand: Stand, s: number): number {
  const { layers, liftsLeft, liftTop, ruleLayers } = ground.sections[s]!
  const standing = { layer: stand.heights[s]!, lifts: stand.lifts[s]! }
  const byRule = Math.min(ruleLayers, liftTop[standing.layer]! - standing.layer)
  return Math.min(byRule, pinnedWish(ground.pins[s]!, standing, layers, liftsLeft))
}

/** The shift around a day's lifts. */
export function closeDay(ground: Ground, day: WorkDay, lifts: readonly PlacedLift[]): DayPlan {
  const { setUp, washOut } = ground.input.crew
  const first = lifts[0]!
  return {
    day,
    lifts,
    shiftStart: first.start - setUp - first.holdBefore,
    shiftEnd: lifts.at(-1)!.ends.at(-1)! + washOut,
  }
}

const printedIn = (ground: Ground, lifts: readonly PlacedLift[]): CubicMetres =>
  lifts.reduce((sum, lift) => sum + liftVolume(ground, lift), 0)

/** A lift to be placed: which section, when the nozzle is free, and what is before it that day. */
export interface Placing {
  readonly ground: Ground
  readonly stand: Stand
  readonly day: WorkDay
  readonly s: number
  readonly from: Instant
  readonly lifts: readonly PlacedLift[]
  readonly printed: CubicMetres
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

/** The day with the section's lift as soon after `from` as it can start; a run too short for one layer is passed over. */
function placeLift(place: Placing, wish: number): readonly PlacedLift[] | undefined {
  const { ground, stand, day, s, from, lifts } = place
  const { setUp, washOut } = ground.input.crew
  const holdBefore = ground.sections[s]!.holdAfter[stand.heights[s]!]!
  const free = lifts.length > 0 ? from + holdBefore : Math.max(from, day.opens + setUp + holdBefore)
  let at = Math.max(free, stand.ready[s]!)
  for (;;) {
    const start = nextUsable(ground.table, at, day.closes - washOut)
    if (start === undefined) return undefined
    const placed = placeAt(place, start, holdBefore, wish)
    if (placed) return placed
    at = usableUntil(ground.table, start)
    if (at <= start) return undefined
  }
}

/**
 * The day with the lift starting at that moment, by `wish` layers at most. If the shift would get too long, the lifts of
 * the first open stretch are moved back to let it begin later, as far as they can be.
 */
export function placeAt(
  { ground, stand, day, s, lifts, printed }: Placing,
  start: Instant,
  holdBefore: Seconds,
  wish: number,
): readonly PlacedLift[] | undefined {
  const { setUp, washOut, longestShift } = ground.input.crew
  const first = lifts[0] ?? { start, holdBefore }
  const shiftStart = first.start - setUp - first.holdBefore
  const below = stand.heights[s]!
  const fitBy = (room: Seconds) => {
    const closing = Math.min(day.closes, shiftStart + room + longestShift) - washOut
    const fit = fitLift(ground, s, below, start, closing, printed, wish)
    return fit && { ...fit, s, below, holdBefore }
  }
  const room = roomToDelay(ground, lifts, { start, holdBefore })
  const lift = fitBy(room)
  const needed = lift ? delayNeeded(ground, lifts, lift.ends.at(-1)!) : 0
  const moved = needed > 0 ? delayLifts(ground, lifts, needed) : lifts
  if (lift && moved) return [...moved, lift]
  const plain = room > 0 ? fitBy(0) : undefined
  return plain && [...lifts, plain]
}

export function liftVolume(ground: Ground, lift: PlacedLift): CubicMetres {
  const { volumeBy } = ground.sections[lift.s]!
  return volumeBy[lift.below + lift.layers]! - volumeBy[lift.below]!
}

/** Lifts so low are a nuisance: a set-up and a change-over for next to nothing. */
export const CRUMB = 2

/** Whether a lift has a layer or two though lift ends would let it have more. */
export const isCrumb = ({ sections }: Ground, { s, below, layers }: PlacedLift): boolean =>
  layers <= CRUMB && sections[s]!.stretch[below]! > CRUMB

/** What stands after the day. */
export function standAfter(ground: Ground, stand: Stand, plan: DayPlan): Stand {
  const heights = [...stand.heights]
  const ready = [...stand.ready]
  const lifts = [...stand.lifts]
  for (const lift of plan.lifts) {
    heights[lift.s] = lift.below + lift.layers
    ready[lift.s] = lift.ends.at(-1)! + ground.cure
    lifts[lift.s]!++
  }
  return { heights, ready, lifts }
}
