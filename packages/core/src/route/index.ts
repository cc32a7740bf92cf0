export {
  type BeadSize,
  beadFlow,
  beadPerimeter,
  beadSection,
  beadVolume,
  contactWidth,
  fillPitch,
  riseRate,
} from './bead-flow.js'
export { checkFlow } from './check-flow.js'
export { checkReach } from './check-reach.js'
export { checkTravels } from './check-travels.js'
export { formulas } from './formulas.js'
export { headingTargets, isSharp } from './heading.js'
export { layerRouteOf, layerTime, startsOf } from './layer-route.js'
export { type LayerRun, type LiftRun, type LiftSpan, liftRun } from './lift-run.js'
export { type Proud, type RouteOptions, type RouteRules, routeRules, type StartPlace } from './options.js'
export type { LayerRoute, Pass, SectionRoutes, Travel } from './pass.js'
export { routeSection } from './route-section.js'
export { rapidTime } from './travel.js'
export { headingLag, type Move, type SpeedProfile, sharpTurn, speedProfile } from './velocity.js'
