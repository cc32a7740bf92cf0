export { columnCavity } from './cavity.js'
export { formulas } from './formulas.js'
export type { ColumnPour } from './job-pours.js'
export { flowingGrout, jobPours } from './job-pours.js'
export type { FillChemistry, VibratedFill } from './lateral-pressure.js'
export {
  columnPressure,
  columnRateFor,
  headPressure,
  wallPressure,
  weightFactor,
} from './lateral-pressure.js'
export { neededStrength } from './needed-strength.js'
export type { Cavity, Fill, PourPlan, PourRules } from './pour-plan.js'
export { bearablePressure, defaultPourRules, planPour } from './pour-plan.js'
export type { Edge } from './shell-strength.js'
export { hoopTension, plainTension, ruptureModulus, stripPressure, stripTension } from './shell-strength.js'
