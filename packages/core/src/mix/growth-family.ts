import type { LeastSquaresFit } from '../numeric/index.js'
import { leastSquares } from '../numeric/index.js'
import type { Seconds } from '../quantity/index.js'
import type { Observation } from './mix-test.js'

/**
 * A family of growth curves that tests choose from: its parameters, where they may lie and where to start looking.
 * Scatter is a share of the value (a vane errs by so many per cent), so curves are fitted to logarithms.
 */
export interface GrowthFamily<Growth> {
  readonly kind: string
  readonly names: readonly string[]
  readonly units: readonly string[]
  /** Fewest tests that can carry it. */
  readonly fewest: number
  readonly starts: (observations: readonly Observation[]) => readonly (readonly number[])[]
  readonly bounds: (observations: readonly Observation[]) => {
    readonly least: readonly number[]
    readonly most: readonly number[]
  }
  readonly make: (parameters: readonly number[], oldest: Seconds) => Growth
  readonly value: (growth: Growth, age: Seconds) => number
  /** The same growth with every value multiplied. */
  readonly scale: (growth: Growth, share: number) => Growth
}

/** Whether there are tests enough for a family: in number, and at more ages than it has parameters. */
export const carries = <Growth>(
  family: GrowthFamily<Growth>,
  observations: readonly Observation[],
): boolean => observations.length >= family.fewest && distinctAges(observations) > family.names.length

export const distinctAges = (observations: readonly Observation[]): number =>
  new Set(observations.map(({ age }) => age)).size

/** Best fit of one family over all of its starts. */
export function fitFamily<Growth>(
  family: GrowthFamily<Growth>,
  observations: readonly Observation[],
  starts: readonly (readonly number[])[] = family.starts(observations),
): LeastSquaresFit {
  const oldest = Math.max(...observations.map(({ age }) => age))
  const residuals = (parameters: readonly number[]) => {
    const growth = family.make(parameters, oldest)
    return observations.map(({ age, value }) => Math.log(family.value(growth, age) / value))
  }
  const bounds = family.bounds(observations)
  const fits = starts.map(start => leastSquares({ residuals, start, ...bounds }))
  return fits.reduce((best, fit) => (fit.sumOfSquares < best.sumOfSquares ? fit : best))
}

/**
 * Corrected Akaike criterion of a least-squares fit: n·ln(SS/n) + 2k + 2k(k + 1)/(n − k − 1), k with the scatter
 * counted as a parameter. None where the tests are too few for it.
 *
 * Source   [HurvichTsai1989], from memory.
 * Range    n > k + 1.
 * Assumes  independent normal residuals of equal scatter.
 */
export function correctedAkaike(sumOfSquares: number, tests: number, parameters: number): number | undefined {
  const k = parameters + 1
  if (tests <= k + 1) return undefined
  // A perfect fit would give minus infinity; no test is better than a millionth.
  const perTest = Math.max(sumOfSquares / tests, 1e-12)
  return tests * Math.log(perTest) + 2 * k + (2 * k * (k + 1)) / (tests - k - 1)
}
