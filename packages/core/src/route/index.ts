export { type BeadSize, beadFlow, riseRate } from './bead-flow.js'
export { checkFlow } from './check-flow.js'
export { checkReach } from './check-reach.js'
export { checkTravels } from './check-travels.js'
export { formulas } from './formulas.js'
export { headingTargets, isSharp } from './heading.js'
export { layerRouteOf, layerTime, startsOf } from './layer-route.js'
export { type LayerRun, type LiftRun, type LiftSpan, liftRun } from './lift-run.js'
export {
  newRouteCache,
  type Proud,
  type RouteCache,
  type RouteOptions,
  type RouteRules,
  routeRules,
  type StartPlace,
} from './options.js'
export type { LayerRoute, Pass, SectionRoutes, Travel } from './pass.js'
export { retimedRoutes } from './retimed-routes.js'
export { routeSection } from './route-section.js'
export { centreOf, partBulge, pointAt, type Segment, segmentsOf } from './segment.js'
export { movesOf, peakAtEnd, stopTurns } from './timed-pass.js'
export { rapidTime } from './travel.js'
export {
  headingLag,
  lengthwiseAcceleration,
  type Move,
  type SpeedProfile,
  sharpTurn,
  speedProfile,
} from './velocity.js'
