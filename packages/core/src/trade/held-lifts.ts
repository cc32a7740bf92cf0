import type { Campaign, Hold, Lift } from '../campaign/index.js'
import type { Instant } from '../quantity/index.js'
import { layerDown } from './lift-time.js'

/** A planned stop of the campaign as somebody is called to it. `id`: the first of its ref by that name, later ones counted. */
export interface Held {
  readonly id: string
  readonly hold: Hold
  readonly lift: Lift
  readonly from: Instant
}

/** Stops of one kind, in the order of the days; those on the lift below are worked off before the lift starts. */
export function heldLifts(campaign: Campaign, reason: Hold['reason']): readonly Held[] {
  const seen = new Map<string, number>()
  return campaign.days
    .flatMap(day => day.lifts)
    .flatMap(lift => lift.holds.filter(hold => hold.reason === reason).map(hold => ({ lift, hold })))
    .map(({ lift, hold }) => {
      const count = (seen.get(hold.ref) ?? 0) + 1
      seen.set(hold.ref, count)
      const isBefore = hold.afterLayer < lift.firstLayer
      return {
        id: count === 1 ? hold.ref : `${hold.ref}/${count}`,
        hold,
        lift,
        from: isBefore ? lift.start - hold.duration : layerDown(lift, hold.afterLayer),
      }
    })
}
