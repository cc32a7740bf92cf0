import type { Seconds } from '../quantity/index.js'
import { type DayPlan, standAfter } from './day-plan.js'
import type { Ground, Stand } from './ground.js'

/** A campaign in the making: what stands, and the days that led there (newest first, shared between trails). */
export interface Trail {
  readonly stand: Stand
  readonly lifts: number
  readonly site: Seconds
  readonly safety: number
  readonly last?: { readonly plan: DayPlan; readonly before: Trail }
}

export const startTrail = (stand: Stand): Trail => ({
  stand,
  lifts: 0,
  site: 0,
  safety: Number.POSITIVE_INFINITY,
})

export function extendTrail(ground: Ground, trail: Trail, plan: DayPlan): Trail {
  return {
    stand: standAfter(ground, trail.stand, plan),
    lifts: trail.lifts + plan.lifts.length,
    site: trail.site + plan.shiftEnd - plan.shiftStart,
    safety: Math.min(trail.safety, ...plan.lifts.map(lift => lift.safety)),
    last: { plan, before: trail },
  }
}

/** The days of a trail, oldest first. */
export function trailPlans(trail: Trail): readonly DayPlan[] {
  const plans: DayPlan[] = []
  for (let at = trail.last; at; at = at.before.last) plans.push(at.plan)
  return plans.reverse()
}

/** Order of preference at equal finish: fewer hours on site, fewer lifts, more safety. */
export const comparePleasant = (a: Trail, b: Trail): number =>
  Math.round(a.site) - Math.round(b.site) || a.lifts - b.lifts || b.safety - a.safety || 0

/** Trails from which everything that follows is the same have the same key. */
export function standKey(stand: Stand, notBefore: number): string {
  return `${stand.heights.join()}|${stand.ready.map(at => Math.max(at, notBefore)).join()}`
}
