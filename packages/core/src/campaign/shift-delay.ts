import type { Instant, Seconds } from '../quantity/index.js'
import type { PlacedLift } from './day-plan.js'
import type { Ground } from './ground.js'
import { usableUntil } from './hour-table.js'
import { fitLift } from './lift-reach.js'

/**
 * A shift has a longest length, so a day with a gap in the middle may have to begin later for the evening to fit.
 * Only the lifts of the first open stretch can wait for that, only as long as the stretch stays open, and only until the
 * crew has to change over and do the planned stops for the lift after them.
 */
export function roomToDelay(
  ground: Ground,
  lifts: readonly PlacedLift[],
  next: { readonly start: Instant; readonly holdBefore: Seconds },
): Seconds {
  const first = lifts[0]
  if (!first) return 0
  const until = usableUntil(ground.table, first.start)
  if (next.start < until) return 0
  const count = lifts.filter(lift => lift.start < until).length
  const end = lifts[count - 1]!.ends.at(-1)!
  const after = lifts[count] ?? next
  const needed = ground.input.crew.changeOver + after.holdBefore
  return Math.max(0, Math.min(until, after.start - needed) - end)
}

/** The lifts of the first stretch moved back by so much, if they keep their layers there. */
export function delayLifts(
  ground: Ground,
  lifts: readonly PlacedLift[],
  by: Seconds,
): readonly PlacedLift[] | undefined {
  const until = usableUntil(ground.table, lifts[0]!.start)
  const moved: PlacedLift[] = []
  for (const lift of lifts) {
    if (lift.start >= until) {
      moved.push(lift)
      continue
    }
    const closing = lift.ends.at(-1)! + by
    // Later means no less mix delivered, so supply is not asked again.
    const again = fitLift(
      ground,
      lift.s,
      lift.below,
      lift.start + by,
      closing,
      Number.NEGATIVE_INFINITY,
      lift.layers,
    )
    if (again?.layers !== lift.layers) return undefined
    moved.push({ ...lift, ...again })
  }
  return moved
}

/** How much later the shift has to begin for a lift to end in time; 0 if it does anyway. */
export function delayNeeded(ground: Ground, lifts: readonly PlacedLift[], end: Instant): Seconds {
  const { setUp, washOut, longestShift } = ground.input.crew
  const first = lifts[0]
  if (!first) return 0
  return Math.max(0, end + washOut - longestShift - (first.start - setUp - first.holdBefore))
}
