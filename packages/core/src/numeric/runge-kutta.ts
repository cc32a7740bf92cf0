import { assert } from '../result/index.js'

/** y′ = slope(x, y) from one place to another. */
export interface InitialValueProblem {
  readonly slope: (x: number, y: readonly number[]) => readonly number[]
  readonly start: readonly number[]
  readonly from: number
  readonly to: number
}

/**
 * Classical fourth-order Runge–Kutta in equal steps; answers y at the end.
 * `visit` sees every step and stops the march by answering `true`: the place of a zero can be caught on the way.
 *
 * Source   [Kutta1901], from memory.
 * Range    steps small against the fastest change of y; halve them and compare.
 * Assumes  a smooth slope. The error falls with the fourth power of the step.
 */
export function rungeKutta(
  problem: InitialValueProblem,
  steps: number,
  visit?: (x: number, y: readonly number[]) => boolean,
): number[] {
  assert(Number.isInteger(steps) && steps > 0, 'a march has a whole number of steps')
  const { slope, from, to } = problem
  const h = (to - from) / steps
  let y: number[] = [...problem.start]
  for (let step = 0; step < steps; step++) {
    const x = from + step * h
    const k1 = slope(x, y)
    const k2 = slope(x + h / 2, along(y, k1, h / 2))
    const k3 = slope(x + h / 2, along(y, k2, h / 2))
    const k4 = slope(x + h, along(y, k3, h))
    y = y.map((value, i) => value + (h / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!))
    if (visit?.(x + h, y)) break
  }
  return y
}

const along = (y: readonly number[], slope: readonly number[], step: number): number[] =>
  y.map((value, i) => value + step * slope[i]!)
