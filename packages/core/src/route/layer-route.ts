import type { Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { LayerRoute, SectionRoutes } from './pass.js'

/** The route of one layer: its band's, of its parity. */
export function layerRouteOf(routes: SectionRoutes, layer: number): LayerRoute {
  const route = routes.routes.find(
    each => each.fromLayer <= layer && layer <= each.toLayer && each.parity === layer % 2,
  )
  assert(route, `section ${routes.section} has a route for layer ${layer}`)
  return route
}

/** Nozzle time of one layer: printing, turning, lifting and travelling; no holds. */
export const layerTime = (route: LayerRoute): Seconds => route.printTime + route.travelTime

/** How often the pump starts in one layer, sharp corners not counted. */
export const startsOf = (route: LayerRoute): number => route.travels.filter(travel => !travel.joined).length
