import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'

/** Layers each section has at a moment of the campaign. */
export function standingLayers(plan: Plan, moment: Instant): ReadonlyMap<string, number> {
  const standing = new Map<string, number>()
  for (const lift of plan.campaign.days.flatMap(day => day.lifts)) {
    const down = lift.layerEnds.filter(end => end <= moment).length
    if (down > 0)
      standing.set(lift.section, Math.max(standing.get(lift.section) ?? 0, lift.firstLayer - 1 + down))
  }
  return standing
}

/** The layer to show at a moment: the one going down, or the highest that stands; the first before anything does. */
export function layerAt(plan: Plan, moment: Instant): number {
  const running = plan.campaign.days
    .flatMap(day => day.lifts)
    .find(lift => lift.start <= moment && moment < lift.end)
  if (running)
    return Math.min(
      running.lastLayer,
      running.firstLayer + running.layerEnds.filter(end => end <= moment).length,
    )
  return Math.max(1, ...standingLayers(plan, moment).values())
}
