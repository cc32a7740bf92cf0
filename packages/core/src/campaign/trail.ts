import type { Seconds } from '../quantity/index.js'
import { type DayPlan, isCrumb, standAfter } from './day-plan.js'
import type { Ground, Stand } from './ground.js'
import { missedOn } from './pins.js'

/** A campaign in the making: what stands, and the days that led there (newest first, shared between trails). */
export interface Trail {
  readonly stand: Stand
  readonly lifts: number
  readonly days: number
  /** Lifts of a layer or two that no lift ends force. */
  readonly crumbs: number
  /** Pins whose day went by without them. */
  readonly missed: number
  readonly site: Seconds
  readonly safety: number
  readonly last?: { readonly plan: DayPlan; readonly before: Trail }
}

export const startTrail = (stand: Stand): Trail => ({
  stand,
  lifts: 0,
  days: 0,
  crumbs: 0,
  missed: 0,
  site: 0,
  safety: Number.POSITIVE_INFINITY,
})

export function extendTrail(ground: Ground, trail: Trail, plan: DayPlan): Trail {
  const stand = standAfter(ground, trail.stand, plan)
  const crumbs = plan.lifts.filter(lift => isCrumb(ground, lift)).length
  return {
    stand,
    lifts: trail.lifts + plan.lifts.length,
    days: trail.days + 1,
    crumbs: trail.crumbs + crumbs,
    missed: trail.missed + missed(ground, trail.stand, stand, plan.day.date),
    site: trail.site + plan.shiftEnd - plan.shiftStart,
    safety: Math.min(trail.safety, ...plan.lifts.map(lift => lift.safety)),
    last: { plan, before: trail },
  }
}

/** The trail after a day without a lift. */
export function passDay(ground: Ground, trail: Trail, date: string): Trail {
  const count = missed(ground, trail.stand, trail.stand, date)
  return count === 0 ? trail : { ...trail, missed: trail.missed + count }
}

function missed({ pins, sections }: Ground, before: Stand, after: Stand, date: string): number {
  const heightOf = (stand: Stand, s: number) => ({ lifts: stand.lifts[s]!, layer: stand.heights[s]! })
  return pins.reduce(
    (sum, own, s) =>
      own.lifts.length === 0
        ? sum
        : sum + missedOn(own, heightOf(before, s), heightOf(after, s), date, sections[s]!.layers),
    0,
  )
}

/** The days of a trail, oldest first. */
export function trailPlans(trail: Trail): readonly DayPlan[] {
  const plans: DayPlan[] = []
  for (let at = trail.last; at; at = at.before.last) plans.push(at.plan)
  return plans.reverse()
}

/** Hours on site are told apart by the quarter: a few minutes more are no price for a calmer order. */
const QUARTER: Seconds = 900

/** Order of preference at equal finish: pins kept, no needless low lifts, fewer hours on site, fewer lifts, more safety. */
export const comparePleasant = (a: Trail, b: Trail): number =>
  a.missed - b.missed ||
  a.crumbs - b.crumbs ||
  Math.round(a.site / QUARTER) - Math.round(b.site / QUARTER) ||
  a.lifts - b.lifts ||
  Math.round(a.site) - Math.round(b.site) ||
  b.safety - a.safety ||
  0

/** Trails from which everything that follows is the same have the same key. */
export function standKey({ pins }: Ground, { heights, ready, lifts }: Stand, notBefore: number): string {
  const counted = lifts.filter((_, s) => pins[s]!.lifts.length > 0)
  return `${heights.join()}|${ready.map(at => Math.max(at, notBefore)).join()}|${counted.join()}`
}
