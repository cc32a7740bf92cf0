import {
  type BlockMatrix,
  backwardBlocks,
  blockMatrix,
  blockOf,
  type Factored,
  factorBlocks,
  forwardBlocks,
} from './block-cholesky.js'
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

interface PlacedRun {
  readonly stiffness: RunStiffness
  readonly cosine: number
  readonly sine: number
  /** In the long vector: where its blocks between the ends begin, −1 for the ends; and its ends' nodes one by one. */
  readonly inside: Int32Array
  readonly ends: readonly [Int32Array, Int32Array]
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

function jointMatrix(
  { nodes, offsets, fixed }: ShellSystem,
  positions: readonly number[],
  found: readonly ShellRun[],
  runs: readonly PlacedRun[],
): BlockMatrix {
  const jointOf = new Map(positions.map((position, joint) => [position, joint]))
  const pairs = found.map(({ positions: own }): [number, number] => [
    jointOf.get(own[0]!)!,
    jointOf.get(own[own.length - 1]!)!,
  ])
  const matrix = blockMatrix(
    positions.map(position => nodes.sizes[position]!),
    pairs,
  )
  const known = new Map<RunStiffness, Map<number, Float64Array>>()
  runs.forEach((run, i) => {
    const unknowns = run.ends.map(end => Array.from(end).flatMap(first => SIX.map(a => first + a)))
    const joints = pairs[i]!
    const byHeading = known.get(run.stiffness) ?? new Map<number, Float64Array>()
    known.set(run.stiffness, byHeading)
    const heading = Math.round(found[i]!.heading * 1e9)
    const between = byHeading.get(heading) ?? stiffnessOfEnds(run)
    byHeading.set(heading, between)
    const size = unknowns[0]!.length + unknowns[1]!.length
    for (const [p, rows] of unknowns.entries())
      for (const [q, columns] of unknowns.entries()) {
        const [j, k] = [joints[p]!, joints[q]!]
        if (matrix.place[j]! < matrix.place[k]!) continue
        const [target, width] = [blockOf(matrix, j, k), matrix.sizes[k]!]
        const [rowStart, columnStart] = [offsets[positions[j]!]!, offsets[positions[k]!]!]
        rows.forEach((row, a) => {
          if (fixed[row]) return
          const from = (a + p * unknowns[0]!.length) * size + q * unknowns[0]!.length
          const to = (row - rowStart) * width - columnStart
          columns.forEach((column, b) => {
            if (!fixed[column]) target[to + column]! += between[from + b]!
          })
        })
      }
  })
  // A held unknown keeps a one on its diagonal and nothing else: it stays zero.
  positions.forEach((position, joint) => {
    const size = nodes.sizes[position]!
    for (let a = 0; a < size; a++)
      if (fixed[offsets[position]! + a]) matrix.diagonal[joint]![a * size + a] = 1
  })
  return matrix
}

const SIX = [0, 1, 2, 3, 4, 5]

/** Stiffness of both ends in the building frame, what lies between them free. */
function stiffnessOfEnds({ stiffness: { matrix }, cosine, sine }: PlacedRun): Float64Array {
  const [first, last] = matrix.order.slice(-2) as unknown as readonly [number, number]
  const [a, b] = [matrix.sizes[first]!, matrix.sizes[last]!]
  const size = a + b
  const full = new Float64Array(size * size)
  const copy = (block: Float64Array, rows: number, columns: number, down: number, along: number) => {
    for (let i = 0; i < rows; i++)
      for (let j = 0; j < columns; j++) full[(down + i) * size + along + j] = block[i * columns + j]!
  }
  copy(matrix.diagonal[first]!, a, a, 0, 0)
  copy(blockOf(matrix, last, first), b, a, a, 0)
  copy(matrix.diagonal[last]!, b, b, a, a)
  mirror(full, size)
  for (let i = 0; i < size; i++) turnNodes(full, i * size, size, cosine, sine)
  transpose(full, size)
  for (let i = 0; i < size; i++) turnNodes(full, i * size, size, cosine, sine)
  return full
}

function mirror(square: Float64Array, size: number): void {
  for (let i = 0; i < size; i++) for (let j = 0; j < i; j++) square[j * size + i] = square[i * size + j]!
}

function transpose(square: Float64Array, size: number): void {
  for (let i = 0; i < size; i++)
    for (let j = 0; j < i; j++) {
      const [below, above] = [square[i * size + j]!, square[j * size + i]!]
      square[i * size + j] = above
      square[j * size + i] = below
    }
}

/** Turns displacements and rotations of nodes about the upright axis, from a run's axes into the building's. */
function turnNodes(x: Float64Array, at: number, length: number, cosine: number, sine: number): void {
  for (let i = at; i < at + length; i += 3) {
    const [u, v] = [x[i]!, x[i + 1]!]
    x[i] = cosine * u - sine * v
    x[i + 1] = sine * u + cosine * v
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

function endOffsets({ stiffness: { matrix, offsets } }: PlacedRun): readonly [number, number] {
  const [first, last] = matrix.order.slice(-2) as unknown as readonly [number, number]
  return [offsets[first]!, offsets[last]!]
}

function zeroEnds(run: PlacedRun): void {
  endOffsets(run).forEach((at, end) => {
    run.stiffness.scratch.fill(0, at, at + UNKNOWNS * run.ends[end]!.length)
  })
}

/** Every node of both ends: where it is in the run's vector and in the long one. */
function eachEnd(run: PlacedRun, call: (at: number, node: number) => void): void {
  endOffsets(run).forEach((at, end) => {
    run.ends[end]!.forEach((node, i) => {
      call(at + UNKNOWNS * i, node)
    })
  })
}
