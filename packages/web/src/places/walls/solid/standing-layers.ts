import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'

/** When each layer of a section is down, layer 1 first; layers no campaign reaches are never down. */
export type LayerClock = Readonly<Record<string, readonly Instant[]>>

export function layerClock(plan: Plan): LayerClock {
  const clock: Record<string, Instant[]> = {}
  for (const { section, layers } of plan.bands)
    clock[section] = new Array<Instant>(layers).fill(Number.POSITIVE_INFINITY)
  for (const lift of plan.campaign.days.flatMap(day => day.lifts)) {
    lift.layerEnds.forEach((end, i) => {
      const own = clock[lift.section]
      if (own) own[lift.firstLayer - 1 + i] = end
    })
  }
  return clock
}

/** How many layers of a section stand at a moment. Layers come in order, so the first one missing ends the count. */
export function standingLayers(clock: readonly Instant[], moment: Instant): number {
  const missing = clock.findIndex(end => end > moment)
  return missing < 0 ? clock.length : missing
}
