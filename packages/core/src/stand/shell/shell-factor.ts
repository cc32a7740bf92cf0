import {
  type BlockMatrix,
  backwardBlocks,
  type Factored,
  factorBlocks,
  forwardBlocks,
} from './block-cholesky.js'
import { jointMatrix } from './joint-matrix.js'
import { type PlacedRun, runBackward, runForward } from './placed-run.js'
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
    pieces,
    ends: [nodesAt(positions[0]!), nodesAt(positions[pieces.length]!)],
  }
}

/** Solves L·y = x in place. */
export function solveForward({ system, runs, joints, jointOffsets }: ShellFactor, x: Float64Array): void {
  for (const run of runs) runForward(run, x)
  zeroFixed(system, x)
  forwardBlocks(joints, x, jointOffsets)
}

/** Solves Lᵀ·x = y in place. */
export function solveBackward({ system, runs, joints, jointOffsets }: ShellFactor, x: Float64Array): void {
  zeroFixed(system, x)
  backwardBlocks(joints, x, jointOffsets)
  for (const run of runs) runBackward(run, x)
}

/** Adds to `pushed` what moving does to the elements of some edges. */
export type Push = (edges: readonly number[], moves: Float64Array, pushed: Float64Array) => void

/**
 * L⁻¹·G·L⁻ᵀ·x, G as a push. No two runs share an element: each is gone through back and forth while its factor is at hand,
 * which for sections of many megabytes is what takes the time.
 */
export function throughFactor(factor: ShellFactor, x: Float64Array, push: Push): Float64Array {
  const { system, runs, joints, jointOffsets } = factor
  const [moves, pushed] = [x.slice(), new Float64Array(x.length)]
  zeroFixed(system, moves)
  backwardBlocks(joints, moves, jointOffsets)
  for (const run of runs) {
    runBackward(run, moves)
    push(run.pieces, moves, pushed)
    runForward(run, pushed)
  }
  zeroFixed(system, pushed)
  forwardBlocks(joints, pushed, jointOffsets)
  return pushed
}

export function zeroFixed({ fixed }: ShellSystem, x: Float64Array): void {
  for (let i = 0; i < x.length; i++) if (fixed[i]) x[i] = 0
}
