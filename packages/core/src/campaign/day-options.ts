import type { Instant } from '../quantity/index.js'
import {
  CRUMB,
  closeDay,
  type DayPlan,
  dayBegins,
  fillDay,
  isCrumb,
  type KnownFillings,
  type PlacedLift,
  type Wish,
} from './day-plan.js'
import type { Ground, Stand } from './ground.js'
import type { Bounds } from './lower-bound.js'
import { isPressing } from './pins.js'
import { printTimeBetween } from './section-clock.js'
import { soloFinish } from './solo-finish.js'
import type { WorkDay } from './work-day.js'

/** How widely the scheduler looks: trails kept from day to day, sections tried as first of the day, heights tried. */
export interface Breadth {
  readonly trails: number
  readonly firsts: number
  readonly wishes: number
}

/** Sections still to print: those whose pins press, then the one that alone would finish last first. */
export function urgentFirst(ground: Ground, bounds: Bounds, stand: Stand, day: number): readonly number[] {
  const open = ground.sections.flatMap((section, s) => {
    const height = stand.heights[s]!
    if (height >= section.layers) return []
    const solo = soloFinish(ground, bounds, s, height, day)
    return [
      {
        s,
        pressing: Number(presses(ground, stand, s, day)),
        solo,
        lifts: section.liftsLeft[height]!,
        work: printTimeBetween(section, height, section.layers),
      },
    ]
  })
  open.sort(
    (a, b) => b.pressing - a.pressing || b.solo - a.solo || b.lifts - a.lifts || b.work - a.work || a.s - b.s,
  )
  return open.map(one => one.s)
}

const presses = (ground: Ground, stand: Stand, s: number, day: number): boolean =>
  ground.pins[s]!.lifts.length > 0 && isPressing(ground.pins[s]!, stand.lifts[s]!, ground.days, day)

/** Different fillings of one day, without doubles, the plain one (most urgent first, as tall as it goes) first. */
export function dayOptions(
  ground: Ground,
  bounds: Bounds,
  stand: Stand,
  start: Stand,
  day: number,
  breadth: Breadth,
): readonly DayPlan[] {
  const workDay = ground.days[day]!
  if (workDay.off) return []
  const urgent = urgentFirst(ground, bounds, stand, day)
  const begins = dayBegins(ground, workDay, stand)
  const seen = new Map<string, DayPlan>()
  const known: KnownFillings = new Map()
  for (const wish of wishes(ground).slice(0, breadth.wishes)) {
    for (const order of orders(urgent, breadth.firsts)) {
      const plan = bestBegin(ground, stand, workDay, begins, order, wish, start, known)
      if (!plan) continue
      const again = (begin: Instant, only: readonly number[]) =>
        fillDay(ground, stand, workDay, begin, only, wish, start, known)
      for (const one of [plan, ...withoutCrumb(ground, plan, again)]) {
        const key = one.lifts.map(lift => `${lift.s}:${lift.layers}:${lift.start}`).join()
        if (!seen.has(key)) seen.set(key, one)
      }
    }
  }
  return [...seen.values()]
}

/**
 * The day without a last lift that is hardly worth its change-over; or with a last lift a little lower where it would leave
 * no more than a crumb for the next one.
 */
function withoutCrumb(
  ground: Ground,
  { day, lifts }: DayPlan,
  again: (begin: Instant, only: readonly number[]) => DayPlan | undefined,
): readonly DayPlan[] {
  const last = lifts.at(-1)!
  const before = lifts.slice(0, -1)
  if (isCrumb(ground, last)) {
    const fewer =
      before[0] &&
      again(
        before[0].start,
        before.map(lift => lift.s),
      )
    return fewer ? [fewer] : []
  }
  const layers = last.layers - layersToLeave(ground, last)
  if (layers === last.layers || layers <= CRUMB) return []
  return [closeDay(ground, day, [...before, { ...last, layers, ends: last.ends.slice(0, layers) }])]
}

/** Layers by which a lift is too tall for the next one below the same lift end to be worth its while. */
function layersToLeave({ sections }: Ground, { s, below, layers }: PlacedLift): number {
  const left = sections[s]!.liftTop[below]! - below - layers
  return left > 0 && left <= CRUMB ? CRUMB + 1 - left : 0
}

/** Of all beginnings the one that prints longest; of equals the one that goes home soonest after the shortest shift. */
export function bestBegin(
  ground: Ground,
  stand: Stand,
  day: WorkDay,
  begins: readonly number[],
  order: readonly number[],
  wish: Wish,
  start: Stand,
  known: KnownFillings = new Map(),
): DayPlan | undefined {
  let best: DayPlan | undefined
  let most = 0
  for (const begin of begins) {
    const plan = fillDay(ground, stand, day, begin, order, wish, start, known)
    if (!plan) continue
    const printing = printingTime(ground, plan) - 1e-6 * (plan.shiftEnd - plan.shiftStart)
    if (!best || printing > most + 1e-3) {
      best = plan
      most = printing
    }
  }
  return best
}

const printingTime = (ground: Ground, plan: DayPlan): number =>
  plan.lifts.reduce(
    (sum, { s, below, layers }) => sum + printTimeBetween(ground.sections[s]!, below, below + layers),
    0,
  )

/** The urgent order, then with each of the next few sections pulled to the front, then to the second place. */
function orders(urgent: readonly number[], firsts: number): readonly (readonly number[])[] {
  const pulled = (from: number, to: number) => {
    const order = [...urgent]
    order.splice(to, 0, ...order.splice(from, 1))
    return order
  }
  const made: (readonly number[])[] = [urgent]
  for (let i = 1; i < Math.min(firsts, urgent.length); i++) made.push(pulled(i, 0))
  for (let i = 2; i < Math.min(firsts, urgent.length); i++) made.push(pulled(i, 1))
  return made
}

/**
 * Heights to ask for: as tall as it goes; only as tall as keeps the number of lifts; the lifts left made equal.
 * A shorter lift can leave room for another section on the same day without costing a lift later.
 */
function wishes(ground: Ground): readonly Wish[] {
  const tallest: Wish = () => Number.POSITIVE_INFINITY
  const least: Wish = (s, below) => {
    const { liftsLeft, layers } = ground.sections[s]!
    let layer = below + 1
    while (layer < layers && liftsLeft[layer]! >= liftsLeft[below]!) layer++
    return layer - below
  }
  const even: Wish = (s, below) => {
    const { liftsLeft, liftTop } = ground.sections[s]!
    const top = liftTop[below]!
    return Math.ceil((top - below) / Math.max(1, liftsLeft[below]! - liftsLeft[top]!))
  }
  return [tallest, least, even]
}
