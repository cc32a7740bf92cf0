import type { Campaign } from '@dawnlift/core/campaign'

/** Which lift is under way, or how many layers stand. */
export function standingText(plan: { readonly campaign: Pick<Campaign, 'days'> }, moment: number): string {
  const lifts = plan.campaign.days.flatMap(day => day.lifts)
  const running = lifts.find(lift => lift.start <= moment && moment < lift.end)
  if (running) {
    const layer = running.firstLayer + running.layerEnds.filter(end => end <= moment).length
    return `${running.id}: layer ${Math.min(layer, running.lastLayer)} of ${running.lastLayer} going down`
  }
  const standing = lifts.reduce(
    (count, lift) => count + lift.layerEnds.filter(end => end <= moment).length,
    0,
  )
  const all = lifts.reduce((count, lift) => count + lift.layerEnds.length, 0)
  return `${standing} of ${all} section layers stand`
}
