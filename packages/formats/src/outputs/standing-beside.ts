import type { Lift } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'
import type { Proud } from '@dawnlift/core/route'

/**
 * The walls of other sections that stand higher than a lift begins, as high as they are by then: each by the rings of the layer that covers most:
 * the way through a doorway is taken to be walled up, too.
 */
export function standingBeside({ bands, campaign, job }: Plan, lift: Lift): readonly Proud[] {
  const lifts = campaign.days.flatMap(day => day.lifts)
  return bands
    .filter(({ section }) => section !== lift.section)
    .flatMap(({ section, layers, bands: all }) => {
      const own = lifts.filter(each => each.section === section)
      const printed = layersBy(lift.start, own, layers)
      if (printed < lift.firstLayer) return []
      const laid = all.filter(band => band.fromLayer <= printed).sort((a, b) => b.bodyArea - a.bodyArea)
      const top = printed * job.print.layerHeight
      return (laid[0]?.body ?? [])
        .flatMap(({ outer, holes }) => [outer, ...holes])
        .map(outline => ({ name: `section ${section}`, outline, top }))
    })
}

/** Layers of a section that lie at a moment; one without a lift to come has all of them. */
function layersBy(moment: number, lifts: readonly Lift[], layers: number): number {
  const before = lifts.filter(each => each.start < moment).map(each => each.lastLayer)
  const next = lifts.filter(each => each.start >= moment).map(each => each.firstLayer - 1)
  return Math.max(
    0,
    ...before,
    ...(next.length > 0 ? [Math.min(...next)] : before.length > 0 ? [] : [layers]),
  )
}
