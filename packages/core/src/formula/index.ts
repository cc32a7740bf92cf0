export type { Formula, FormulaInput } from './formula.js'
export type { Calculation, CalculationInput } from './registry.js'
export { calculateFormula, findFormula } from './registry.js'
