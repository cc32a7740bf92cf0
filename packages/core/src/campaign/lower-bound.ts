import { type DayFrame, dayFrames } from './day-frame.js'
import { BOUND_SLACK, dayWorths, togetherFinish, type Worth } from './day-worth.js'
import type { Ground, Stand } from './ground.js'
import { workBetween } from './section-clock.js'
import { type Carried, carriedTogether, sharedFinish } from './shared-bound.js'
import { soloFinish } from './solo-finish.js'

/** The days as the crew finds them, what they are worth, what sections carry together, and the solo finishes known so far. */
export interface Bounds {
  readonly days: readonly DayFrame[]
  readonly worths: readonly Worth[]
  readonly carried: readonly Carried[]
  readonly solo: Map<number, number>
}

export function prepareBounds(ground: Ground): Bounds {
  const days = dayFrames(ground)
  return {
    days,
    worths: dayWorths(ground, days),
    carried: carriedTogether(ground.input.work),
    solo: new Map(),
  }
}

/**
 * First day (its number) by whose end everything could be up, starting with day `from`; `NEVER` if the hours end first.
 *
 * Three relaxations, the latest of which counts:
 * alone: each section as if it had machine and crew to itself, one lift a day, bounded by rule height, lift ends and
 *   the longest open stretch of the day, planned stops included;
 * shared: the sections that carry a lintel together, up to it and, from the day after on, above it;
 * together: all print time and planned stops left, and so much for each lift it takes at least, against what the days are
 *   worth at that price of a lift.
 * None looks at standing, resting time or deliveries, which only delay.
 */
export function finishBound(ground: Ground, bounds: Bounds, stand: Stand, from: number): number {
  let latest = from - 1
  const total = { work: 0, lifts: 0 }
  for (const [s, section] of ground.sections.entries()) {
    const height = stand.heights[s]!
    if (height >= section.layers) continue
    latest = Math.max(latest, soloFinish(ground, bounds, s, height, from))
    total.work += workBetween(section, height, section.layers)
    total.lifts += section.liftsLeft[height]!
  }
  if (latest < from) return latest
  latest = togetherFinish(bounds.worths, from, total, latest)
  return bounds.carried.length === 0 ? latest : sharedFinish(ground, bounds, stand, from, latest)
}

/** Fewest print days for what is left, whichever days they are. */
export function printDaysBound(ground: Ground, bounds: Bounds, stand: Stand): number {
  const left = ground.sections.map((section, s) => ({
    work: workBetween(section, stand.heights[s]!, section.layers),
    lifts: section.liftsLeft[stand.heights[s]!]!,
  }))
  const work = left.reduce((sum, one) => sum + one.work, 0)
  const lifts = left.reduce((sum, one) => sum + one.lifts, 0)
  const together = bounds.worths.map(({ perLift, ofDay }) => fewestToReach(work + lifts * perLift, ofDay))
  return Math.max(0, ...left.map(one => one.lifts), ...together)
}

/** How many of the largest amounts make up the target. */
function fewestToReach(target: number, amounts: Float64Array): number {
  const largest = [...amounts].sort((a, b) => b - a)
  let count = 0
  for (let sum = 0; sum + BOUND_SLACK < target && count < largest.length; count++) sum += largest[count]!
  return count
}
