import { assert } from '../result/index.js'
import { invert, type Matrix, solveLinear } from './matrix.js'

/** Parameters that make the sum of squared residuals least, each kept between its bounds. */
export interface LeastSquaresProblem {
  readonly residuals: (parameters: readonly number[]) => readonly number[]
  readonly start: readonly number[]
  readonly least?: readonly number[]
  readonly most?: readonly number[]
}

export interface LeastSquaresFit {
  readonly parameters: readonly number[]
  readonly residuals: readonly number[]
  readonly sumOfSquares: number
  /** s²·(JᵀJ)⁻¹; absent when the data cannot tell the parameters apart or leave no degree of freedom. */
  readonly covariance?: Matrix
  /** Share of each residual's own point in its fitted value, 0–1. */
  readonly leverages: readonly number[]
  readonly iterations: number
  readonly converged: boolean
}

/**
 * Damped Gauss–Newton (Levenberg–Marquardt) with scaled damping and central differences.
 * Ours because callers need bounds that hold, the covariance and an honest `converged`; checked against NIST data.
 *
 * Source   [Marquardt1963], from memory; scaling by the diagonal of JᵀJ.
 * Range    up to a dozen parameters; as many residuals as parameters or more.
 * Assumes  smooth residuals of equal variance; finds the minimum nearest the start.
 */
export function leastSquares(problem: LeastSquaresProblem): LeastSquaresFit {
  let parameters = problem.start.map((value, i) => within(value, problem, i))
  let residuals = finite(problem.residuals(parameters))
  let damping = 1e-3
  let iterations = 0
  let converged = false
  while (!converged && iterations < 200) {
    iterations++
    const jacobian = jacobianAt(problem, parameters)
    const normal = normalEquations(jacobian, residuals)
    let moved = false
    while (!moved && damping < 1e12) {
      const step = dampedStep(normal, damping, parameters, problem)
      const trial = parameters.map((value, i) => within(value + step[i]!, problem, i))
      const tried = problem.residuals(trial)
      const gain = squares(residuals) - squares(tried)
      if (gain >= 0 && tried.every(Number.isFinite)) {
        const small = trial.every(
          (value, i) => Math.abs(value - parameters[i]!) <= 1e-10 * Math.abs(value) + 1e-300,
        )
        converged = small || gain <= 1e-14 * squares(residuals)
        ;[parameters, residuals, moved] = [trial, [...tried], true]
        damping = Math.max(damping / 10, 1e-12)
      } else damping *= 10
    }
    if (!moved) converged = true
  }
  return { parameters, residuals, iterations, converged, ...evidence(problem, parameters, residuals) }
}

/** √diagonal of the covariance, in the order of the parameters. */
export const standardErrors = (fit: LeastSquaresFit): number[] | undefined =>
  fit.covariance?.map((row, i) => Math.sqrt(row[i]!))

function evidence(problem: LeastSquaresProblem, parameters: readonly number[], residuals: readonly number[]) {
  const jacobian = jacobianAt(problem, parameters)
  const free = residuals.length - parameters.length
  const inverse = invertScaled(normalEquations(jacobian, residuals).square)
  const sumOfSquares = squares(residuals)
  const leverages = jacobian.map(row =>
    inverse
      ? row.reduce((sum, a, i) => sum + a * row.reduce((inner, b, j) => inner + inverse[i]![j]! * b, 0), 0)
      : 1,
  )
  if (!inverse || free <= 0) return { sumOfSquares, leverages }
  const covariance = inverse.map(row => row.map(value => (value * sumOfSquares) / free))
  return { sumOfSquares, leverages, covariance }
}

interface NormalEquations {
  readonly square: number[][]
  readonly gradient: number[]
}

function normalEquations(jacobian: Matrix, residuals: readonly number[]): NormalEquations {
  const size = jacobian[0]?.length ?? 0
  const square = Array.from({ length: size }, () => new Array<number>(size).fill(0))
  const gradient = new Array<number>(size).fill(0)
  for (const [k, row] of jacobian.entries())
    for (let i = 0; i < size; i++) {
      gradient[i]! += row[i]! * residuals[k]!
      for (let j = 0; j < size; j++) square[i]![j]! += row[i]! * row[j]!
    }
  return { square, gradient }
}

/** A parameter that stands at a bound and would leave it stays where it is; the others take the damped step. */
function dampedStep(
  { square, gradient }: NormalEquations,
  damping: number,
  parameters: readonly number[],
  { least, most }: LeastSquaresProblem,
): number[] {
  const held = parameters.map(
    (value, i) =>
      (value <= (least?.[i] ?? -Infinity) && gradient[i]! > 0) ||
      (value >= (most?.[i] ?? Infinity) && gradient[i]! < 0) ||
      square[i]![i] === 0,
  )
  const scale = square.map((row, i) => (held[i] ? 1 : Math.sqrt(row[i]!)))
  const damped = square.map((row, i) =>
    row.map((value, j) => {
      if (held[i] || held[j]) return i === j ? 1 : 0
      return value / (scale[i]! * scale[j]!) + (i === j ? damping : 0)
    }),
  )
  const right = gradient.map((value, i) => (held[i] ? 0 : -value / scale[i]!))
  const solved = solveLinear(damped, right) ?? right
  return solved.map((value, i) => value / scale[i]!)
}

/** Inverts after bringing the diagonal to one: parameters in pascals and in pascals per second differ by millions. */
function invertScaled(square: Matrix): number[][] | undefined {
  const scale = square.map((row, i) => Math.sqrt(row[i]!))
  if (scale.some(value => !(value > 0))) return undefined
  return invert(square.map((row, i) => row.map((value, j) => value / (scale[i]! * scale[j]!))))?.map(
    (row, i) => row.map((value, j) => value / (scale[i]! * scale[j]!)),
  )
}

/** Central differences, one-sided where a bound is in the way. */
function jacobianAt(problem: LeastSquaresProblem, parameters: readonly number[]): number[][] {
  const columns = parameters.map((value, i) => {
    // Where a parameter stands at zero, its start (or one) says what a small change of it is.
    const usual = Math.abs(problem.start[i]!) || 1
    const step = 6e-6 * Math.max(Math.abs(value), 1e-3 * usual)
    const shifted = (by: number) => parameters.map((p, j) => (j === i ? within(p + by, problem, i) : p))
    const [above, below] = [shifted(step), shifted(-step)]
    const [high, low] = [problem.residuals(above), problem.residuals(below)]
    const span = above[i]! - below[i]!
    return high.map((r, k) => (span > 0 ? (r - low[k]!) / span : 0))
  })
  return columns[0]!.map((_, k) => columns.map(column => column[k]!))
}

const within = (value: number, { least, most }: LeastSquaresProblem, i: number): number =>
  Math.min(most?.[i] ?? Infinity, Math.max(least?.[i] ?? -Infinity, value))

const squares = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0)

function finite(values: readonly number[]): number[] {
  assert(values.every(Number.isFinite), 'a fit starts where every residual has a value')
  return [...values]
}
