import {
  type BlockMatrix,
  backwardBlocks,
  type Factored,
  factorBlocks,
  forwardBlocks,
} from './block-cholesky.js'
import { jointMatrix } from './joint-matrix.js'
import { type PlacedRun, turnNodes } from './placed-run.js'
import { UNKNOWNS } from './rectangle.js'
import { type Addition, type RunStiffness, runKind, runLevels, runStiffness } from './run-stiffness.js'
import type { ShellSystem } from './shell-model.js'
import { type ShellRun, shellRuns } from './shell-run.js'

/**
 * Cholesky factor of a section's stiffness. What lies inside runs is eliminated once for every kind of run, in the run's own
 * axes; then the joints between them.
 */
export interface ShellFactor {
  readonly system: ShellSystem
  readonly runs: readonly PlacedRun[]
  readonly joints: BlockMatrix
  /** Where the joints' unknowns begin in the long vector. */
  readonly jointOffsets: Int32Array
}

/**
 * Factors a section. With an addition to the stiffness no two runs are alike; where its sum is not positive there is no
 * factor. `goOn` is asked before every run and every joint.
 */
export function shellFactor(
  system: ShellSystem,
  goOn: (share: number) => boolean,
  addition?: Addition,
): ShellFactor | Exclude<Factored, 'factored'> {
  const found = shellRuns(system)
  const known = new Map<string, RunStiffness>()
  const runs: PlacedRun[] = []
  for (const [i, run] of found.entries()) {
    if (!goOn((0.5 * i) / found.length)) return 'cancelled'
    const kind = addition ? String(i) : runKind(system, run)
    const stiffness = known.get(kind) ?? runStiffness(system, run, addition)
    if (typeof stiffness === 'string') return stiffness
    known.set(kind, stiffness)
    runs.push(placed(system, run, stiffness))
  }
  const positions = [...new Set(found.flatMap(run => [run.positions[0]!, run.positions[run.pieces.length]!]))]
  const joints = jointMatrix(system, positions, found, runs)
  const answer = factorBlocks(joints, share => goOn(0.5 + 0.5 * share))
  if (answer !== 'factored') return answer
  return { system, runs, joints, jointOffsets: Int32Array.from(positions, p => system.offsets[p]!) }
}

function placed(system: ShellSystem, run: ShellRun, stiffness: RunStiffness): PlacedRun {
  const { edges, offsets, nodes } = system
  const { pieces, positions, heading } = run
  const blocks = [...pieces.map(e => edges[e]!.middle), ...positions]
  const { ofPosition } = runLevels(system, run)
  const nodesAt = (position: number) => {
    const own: number[] = []
    ofPosition.forEach((first, level) => {
      if (first >= 0) own.push(offsets[position]! + nodes.firstOf[position]![level]!)
    })
    return Int32Array.from(own)
  }
  const isEnd = (block: number) => block === pieces.length || block === 2 * pieces.length
  return {
    stiffness,
    cosine: Math.cos(heading),
    sine: Math.sin(heading),
    inside: Int32Array.from(blocks, (block, i) => (isEnd(i) ? -1 : offsets[block]!)),
    ends: [nodesAt(positions[0]!), nodesAt(positions[pieces.length]!)],
  }
}

/** Solves L·y = x in place. */
export function solveForward({ system, runs, joints, jointOffsets }: ShellFactor, x: Float64Array): void {
  for (const run of runs) {
    const { matrix, offsets, scratch } = run.stiffness
    gatherInside(run, x)
    turnNodes(scratch, 0, scratch.length, run.cosine, -run.sine)
    zeroEnds(run)
    forwardBlocks(matrix, scratch, offsets)
    scatterInside(run, x)
    eachEnd(run, (at, node) => {
      const [u, v] = [scratch[at]!, scratch[at + 1]!]
      const [p, q] = [scratch[at + 3]!, scratch[at + 4]!]
      x[node]! += run.cosine * u - run.sine * v
      x[node + 1]! += run.sine * u + run.cosine * v
      x[node + 2]! += scratch[at + 2]!
      x[node + 3]! += run.cosine * p - run.sine * q
      x[node + 4]! += run.sine * p + run.cosine * q
      x[node + 5]! += scratch[at + 5]!
    })
  }
  zeroFixed(system, x)
  forwardBlocks(joints, x, jointOffsets)
}

/** Solves Lᵀ·x = y in place. */
export function solveBackward({ system, runs, joints, jointOffsets }: ShellFactor, x: Float64Array): void {
  zeroFixed(system, x)
  backwardBlocks(joints, x, jointOffsets)
  for (const run of runs) {
    const { matrix, offsets, scratch } = run.stiffness
    zeroEnds(run)
    eachEnd(run, (at, node) => {
      for (let a = 0; a < UNKNOWNS; a++) scratch[at + a] = x[node + a]!
      turnNodes(scratch, at, UNKNOWNS, run.cosine, -run.sine)
    })
    gatherInside(run, x)
    backwardBlocks(matrix, scratch, offsets)
    turnNodes(scratch, 0, scratch.length, run.cosine, run.sine)
    scatterInside(run, x)
  }
}

export function zeroFixed({ fixed }: ShellSystem, x: Float64Array): void {
  for (let i = 0; i < x.length; i++) if (fixed[i]) x[i] = 0
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
