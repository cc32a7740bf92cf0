import { convertUnit, type Dimension, dimensionsOf, parseQuantity, writeQuantity } from '../quantity/index.js'
import type { Problem, Result } from '../result/index.js'
import { Bug, closestName, failure, success } from '../result/index.js'
import type { Formula, FormulaInput } from './formula.js'

export interface CalculationInput {
  readonly name: string
  readonly value: number
  readonly unit: string
}

/** What a formula answers, with everything needed to show where the number comes from. */
export interface Calculation {
  readonly formula: string
  readonly says: string
  readonly output: string
  readonly value: number
  readonly unit: string
  readonly source: string
  readonly caution?: string
  /** The inputs as they were used, in the formula's own units. */
  readonly inputs: readonly CalculationInput[]
  /** One sentence for each input outside the range its source allows. */
  readonly warnings: readonly string[]
}

/** The formula of that name, or a problem that names the nearest one. */
export function findFormula(formulas: readonly Formula[], name: string): Result<Formula> {
  const found = formulas.find(each => each.name === name)
  if (found) return success(found)
  const near = closestName(
    name,
    formulas.map(each => each.name),
  )
  const hint = near ? `did you mean “${near}”?` : `${formulas.length} formulas are known; list them with calc`
  return failure([{ code: 'formula/unknown', at: name, say: `There is no formula “${name}”; ${hint}` }])
}

/**
 * Works a formula out from inputs written as `"value unit"`, e.g. `{ air: '86 °F', humidity: '50 %' }`.
 * Every wrong, missing or unknown input is reported; an input outside its range is worked out and warned about.
 */
export function calculateFormula(
  formula: Formula,
  assignments: Readonly<Record<string, string>>,
): Result<Calculation> {
  const inputs: CalculationInput[] = []
  const problems: Problem[] = [...unknownInputs(formula, assignments)]
  for (const input of formula.inputs) {
    const read = readInput(input, assignments[input.name])
    if (read.ok) inputs.push({ name: input.name, value: read.value, unit: input.unit })
    else problems.push(...read.problems)
  }
  if (problems.length > 0) return failure(problems)
  const value = worked(formula, inputs)
  return Number.isFinite(value)
    ? success(calculation(formula, inputs, value))
    : failure([noAnswer(formula, inputs, value)])
}

/** What a formula takes for granted it asserts: with an input outside its range that is no mistake of ours, but no answer. */
function worked(formula: Formula, inputs: readonly CalculationInput[]): number {
  try {
    return formula.calculate(Object.fromEntries(inputs.map(each => [each.name, each.value])))
  } catch (thrown) {
    if (thrown instanceof Bug && warningsOf(formula, inputs).length > 0) return Number.NaN
    throw thrown
  }
}

const calculation = (formula: Formula, inputs: readonly CalculationInput[], value: number): Calculation => ({
  formula: formula.name,
  says: formula.says,
  output: formula.output.name,
  value,
  unit: formula.output.unit,
  source: formula.source,
  ...(formula.caution ? { caution: formula.caution } : {}),
  inputs,
  warnings: warningsOf(formula, inputs),
})

const warningsOf = (formula: Formula, inputs: readonly CalculationInput[]): readonly string[] =>
  formula.inputs.flatMap((input, index) => rangeWarning(input, inputs[index]))

function noAnswer(formula: Formula, inputs: readonly CalculationInput[], value: number): Problem {
  const outside = warningsOf(formula, inputs)
  const why = outside.length > 0 ? outside.join('; ') : neverWords(formula, value)
  return {
    code: 'formula/no-answer',
    at: formula.name,
    say: `${formula.name} has no finite answer for these inputs: ${why}`,
  }
}

/** What no number stands for, where the formula says it: `∞: it never does`, `none where even 30 kPa is too much`. */
function neverWords({ says }: Formula, value: number): string {
  const never =
    value === Number.POSITIVE_INFINITY ? /∞: ([^.;]*)/.exec(says) : /none where ([^.;]*)/.exec(says)
  return never?.[1] ?? 'compare them with the ranges its source allows'
}

function unknownInputs(formula: Formula, given: Readonly<Record<string, string>>): readonly Problem[] {
  const names = formula.inputs.map(each => each.name)
  return Object.keys(given)
    .filter(name => !names.includes(name))
    .map(name => {
      const near = closestName(name, names)
      const hint = near ? `did you mean “${near}”?` : `it takes ${names.join(', ')}`
      return {
        code: 'formula/unknown-input',
        at: name,
        say: `${formula.name} has no input “${name}”; ${hint}`,
      }
    })
}

function readInput(input: FormulaInput, text: string | undefined): Result<number> {
  if (text === undefined) {
    const example = `${input.name}="${input.example} ${input.unit}"`
    const say = `“${input.name}” is missing: ${input.meaning}; write for example ${example}`
    return failure([{ code: 'formula/missing-input', at: input.name, say }])
  }
  const dimensions = dimensionsOf(input.unit)
  if (dimensions.length === 0) return ownUnit(input, text)
  const tries = dimensions.map(dimension => inShownUnit(input, text, dimension))
  return tries.find(each => each.ok) ?? at(input.name, tries[0]!)
}

function inShownUnit(input: FormulaInput, text: string, dimension: Dimension): Result<number> {
  const inside = parseQuantity(text, dimension)
  if (!inside.ok) return inside
  return success(Number(writeQuantity(inside.value, dimension, input.unit).split(' ')[0]))
}

/** A unit that only this formula uses, like `kg/m²/h per kPa`: the number must come in that very unit. */
function ownUnit(input: FormulaInput, text: string): Result<number> {
  const found = /^([-+]?[\d.]+(?:e[-+]?\d+)?)\s*(.*)$/i.exec(text.trim())
  const value = found ? convertUnit(Number(found[1]), (found[2] ?? '').trim(), input.unit) : undefined
  if (value !== undefined && Number.isFinite(value)) return success(value)
  const unit = input.unit === '' ? 'a bare number' : `a number in ${input.unit}`
  const say = `“${text}” cannot be used for ${input.name}; write ${unit}, for example “${input.example} ${input.unit}”`
  return failure([{ code: 'formula/wrong-unit', at: input.name, say: say.replace(' ”', '”') }])
}

const at = (name: string, result: Result<number>): Result<number> =>
  result.ok
    ? result
    : failure(result.problems.map(each => ({ ...each, at: name, say: `${name}: ${each.say}` })))

function rangeWarning(input: FormulaInput, used: CalculationInput | undefined): readonly string[] {
  if (!used) return []
  const under = input.least !== undefined && used.value < input.least
  const over = input.most !== undefined && used.value > input.most
  if (!under && !over) return []
  const range = `${input.least ?? '−∞'} … ${input.most ?? '∞'} ${input.unit}`.trim()
  return [
    `${input.name} is ${used.value} ${input.unit}, outside the range of the source (${range}): do not rely on it`,
  ]
}
