export type { Formula, FormulaInput } from './formula.js'
