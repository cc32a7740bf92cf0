import type { Campaign, Lift, PrintDay } from '../campaign/index.js'
import { nearestOnPath, type Point, pathLength } from '../geometry/index.js'
import type { Instant, Metres } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { LayerRoute, SectionRoutes } from '../route/index.js'
import type { Section } from '../section/index.js'

/** The section that prints this station of a wall; at a joint the one that starts there. */
export function sectionAt(sections: readonly Section[], wall: string, station: Metres): Section | undefined {
  const holding = sections.filter(section =>
    section.stretches.some(s => s.wall === wall && station >= s.from - 1e-9 && station <= s.to + 1e-9),
  )
  return (
    holding.find(section =>
      section.stretches.some(s => s.wall === wall && Math.abs(s.from - station) < 1e-9),
    ) ?? holding[0]
  )
}

/** Lifts of a section from the slab up. */
export const liftsOf = (campaign: Campaign, section: string): readonly Lift[] =>
  campaign.days
    .flatMap(day => day.lifts)
    .filter(lift => lift.section === section)
    .sort((a, b) => a.firstLayer - b.firstLayer)

export function dayOf(campaign: Campaign, lift: Lift): PrintDay {
  const day = campaign.days.find(candidate => candidate.lifts.some(other => other.id === lift.id))
  assert(day, `lift ${lift.id} lies on a print day`)
  return day
}

/** The moment a layer of the lift is down. */
export function layerDown(lift: Lift, layer: number): Instant {
  const down = lift.layerEnds[layer - lift.firstLayer]
  assert(down !== undefined, `layer ${layer} belongs to lift ${lift.id}`)
  return down
}

/** The moment the nozzle starts a layer: the layer below is down and the hold after it is over. */
export function layerStart(lift: Lift, layer: number): Instant {
  if (layer === lift.firstLayer) return lift.start
  const held = lift.holds
    .filter(hold => hold.afterLayer === layer - 1)
    .reduce((sum, hold) => sum + hold.duration, 0)
  return layerDown(lift, layer - 1) + held
}

/** The moment the nozzle comes by a place in a layer. Without a route: half-way through the layer. */
export function passingTime(
  lift: Lift,
  layer: number,
  point: Point,
  routes: readonly SectionRoutes[],
): Instant {
  const start = layerStart(lift, layer)
  const route = routes
    .find(candidate => candidate.section === lift.section)
    ?.routes.find(r => r.fromLayer <= layer && layer <= r.toLayer && r.parity === layer % 2)
  const share = route ? passingShare(route, point) : 0.5
  return start + share * (layerDown(lift, layer) - start)
}

/** Share of a layer's time gone when the nozzle is nearest to a point, 0–1. */
export function passingShare(route: LayerRoute, point: Point): number {
  let clock = 0
  let best = { distance: Number.POSITIVE_INFINITY, clock: 0 }
  route.passes.forEach((pass, index) => {
    clock += route.travels[index]?.time ?? 0
    const near = nearestOnPath(pass.path, point)
    const length = pathLength(pass.path)
    if (near.distance < best.distance)
      best = { distance: near.distance, clock: clock + (pass.time * near.station) / length }
    clock += pass.time
  })
  return clock > 0 ? Math.min(1, best.clock / clock) : 0.5
}
