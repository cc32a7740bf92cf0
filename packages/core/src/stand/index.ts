export { accessZoneWidth, needsBracing } from './access-zone.js'
export { collapseSafety, type LiftAssessment, type StandRules } from './assess-lift.js'
export { type BucklingHeight, bucklingHeight, lengthUnit, type RisingWall } from './buckling-height.js'
export { checkStanding } from './check-standing.js'
export {
  bilinearCollapseLayers,
  type CollapseHeight,
  criticalRise,
  exponentialCollapseHeight,
  firstLayerYield,
  linearCollapseHeight,
} from './collapse-height.js'
export { type Curing, curedModulus } from './curing.js'
export { curvatureGain, curvedInertiaGain } from './curvature.js'
export { standGeometry } from './derive-geometry.js'
export { formulas } from './formulas.js'
export { greenhillHeight, suikerFitHeight } from './greenhill.js'
export { materialWidth, shearLagShare, shearStiffnessAlong, shearStiffnessUp } from './make-up.js'
export {
  type EvenLift,
  type ShortestLayerTime,
  shortestLayerTime,
  type TallestLift,
  tallestLift,
} from './pace.js'
export type { PaceTable } from './pace-table.js'
export { lineMesh, type ShellLine } from './shell/line-mesh.js'
export type { ModeShape } from './shell/mode-shape.js'
export type { PlanEdge, PlanMesh } from './shell/plan-mesh.js'
export {
  type SectionAnswer,
  type SectionBuckling,
  type SectionLift,
  type ShellMesh,
  sectionBuckling,
} from './shell/section-shell.js'
export { type Progress, type ShellBuckling, shellBuckling } from './shell/shell-buckling.js'
export type { Shell } from './shell/shell-model.js'
export { type StandChart, type StandMoment, standChart } from './stand-chart.js'
export type { StandGeometry, StandMake, StandPanel, StandSupports } from './stand-geometry.js'
export { makeStanding, type Standing, type StandingInput, standRulesOf } from './standing.js'
export { mohrCoulombStrength, plasticStrength, type StrengthRule, strengthWords } from './strength.js'
export {
  constructionWindFactor,
  crackingPressure,
  evacuationWind,
  overturningPressure,
  windPressure,
  windSpeedOfPressure,
} from './wind.js'
export { checkWind, sectionModulus, type WindRules, type WindyWall, windSpeedBorne } from './wind-check.js'
