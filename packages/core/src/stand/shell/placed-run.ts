import type { RunStiffness } from './run-stiffness.js'

/** A run in the plan. */
export interface PlacedRun {
  readonly stiffness: RunStiffness
  readonly cosine: number
  readonly sine: number
  /** In the long vector: where its blocks between the ends begin, −1 for the ends; and its ends' nodes one by one. */
  readonly inside: Int32Array
  readonly ends: readonly [Int32Array, Int32Array]
}

/** Turns displacements and rotations of nodes about the upright axis, from a run's axes into the building's. */
export function turnNodes(x: Float64Array, at: number, length: number, cosine: number, sine: number): void {
  for (let i = at; i < at + length; i += 3) {
    const [u, v] = [x[i]!, x[i + 1]!]
    x[i] = cosine * u - sine * v
    x[i + 1] = sine * u + cosine * v
  }
}
