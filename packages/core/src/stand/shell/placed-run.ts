import { backwardBlocks, forwardBlocks } from './block-cholesky.js'
import { UNKNOWNS } from './rectangle.js'
import type { RunStiffness } from './run-stiffness.js'

/** A run in the plan. */
export interface PlacedRun {
  /** Its edges. */
  readonly pieces: readonly number[]
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

/** Solves L·y = x in place for what lies inside a run, and pushes onto its ends in the building frame. */
export function runForward(run: PlacedRun, x: Float64Array): void {
  const { matrix, offsets, scratch } = run.stiffness
  gatherInside(run, x)
  turnNodes(scratch, 0, scratch.length, run.cosine, -run.sine)
  zeroEnds(run)
  forwardBlocks(matrix, scratch, offsets)
  scatterInside(run, x)
  eachEnd(run, (at, node) => {
    turnNodes(scratch, at, UNKNOWNS, run.cosine, run.sine)
    for (let a = 0; a < UNKNOWNS; a++) x[node + a]! += scratch[at + a]!
  })
}

/** Solves Lᵀ·x = y in place for what lies inside a run, its ends known. */
export function runBackward(run: PlacedRun, x: Float64Array): void {
  const { matrix, offsets, scratch } = run.stiffness
  eachEnd(run, (at, node) => {
    for (let a = 0; a < UNKNOWNS; a++) scratch[at + a] = x[node + a]!
    turnNodes(scratch, at, UNKNOWNS, run.cosine, -run.sine)
  })
  gatherInside(run, x)
  backwardBlocks(matrix, scratch, offsets)
  turnNodes(scratch, 0, scratch.length, run.cosine, run.sine)
  scatterInside(run, x)
}

function gatherInside({ stiffness: { offsets, scratch }, inside }: PlacedRun, x: Float64Array): void {
  inside.forEach((from, block) => {
    if (from >= 0)
      scratch.set(x.subarray(from, from + offsets[block + 1]! - offsets[block]!), offsets[block]!)
  })
}

function scatterInside({ stiffness: { offsets, scratch }, inside }: PlacedRun, x: Float64Array): void {
  inside.forEach((to, block) => {
    if (to >= 0) x.set(scratch.subarray(offsets[block]!, offsets[block + 1]!), to)
  })
}

function zeroEnds(run: PlacedRun): void {
  run.stiffness.ends.forEach(({ at }, end) => {
    run.stiffness.scratch.fill(0, at, at + UNKNOWNS * run.ends[end]!.length)
  })
}

/** Every node of both ends: where it is in the run's vector and in the long one. */
function eachEnd(run: PlacedRun, call: (at: number, node: number) => void): void {
  run.stiffness.ends.forEach(({ at }, end) => {
    run.ends[end]!.forEach((node, i) => {
      call(at + UNKNOWNS * i, node)
    })
  })
}
