import { type BlockMatrix, blockMatrix, blockOf } from './block-cholesky.js'
import { type PlacedRun, turnNodes } from './placed-run.js'
import { UNKNOWNS } from './rectangle.js'
import type { RunStiffness } from './run-stiffness.js'
import type { ShellSystem } from './shell-model.js'
import type { ShellRun } from './shell-run.js'

/** The stiffness of the positions between runs: what runs leave of themselves at their ends, added up. */
export function jointMatrix(
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
  const offsetsOf = Int32Array.from(positions, position => offsets[position]!)
  const matrix = blockMatrix(
    positions.map(position => nodes.sizes[position]!),
    pairs,
  )
  const known = new Map<RunStiffness, Map<number, Float64Array>>()
  runs.forEach((run, i) => {
    const byHeading = known.get(run.stiffness) ?? new Map<number, Float64Array>()
    known.set(run.stiffness, byHeading)
    const heading = Math.round(found[i]!.heading * 1e9)
    const between = byHeading.get(heading) ?? stiffnessOfEnds(run)
    byHeading.set(heading, between)
    addEnds(matrix, run, between, pairs[i]!, offsetsOf, fixed)
  })
  // A held unknown keeps a one on its diagonal and nothing else: it stays zero.
  positions.forEach((position, joint) => {
    const size = nodes.sizes[position]!
    for (let a = 0; a < size; a++)
      if (fixed[offsets[position]! + a]) matrix.diagonal[joint]![a * size + a] = 1
  })
  return matrix
}

/** Adds the part of a run's ends at every pair of them. */
function addEnds(
  matrix: BlockMatrix,
  { ends }: PlacedRun,
  between: Float64Array,
  joints: readonly [number, number],
  offsets: Int32Array,
  fixed: Uint8Array,
): void {
  const unknowns = ends.map(end =>
    Int32Array.from(
      { length: UNKNOWNS * end.length },
      (_, i) => end[Math.floor(i / UNKNOWNS)]! + (i % UNKNOWNS),
    ),
  )
  const size = unknowns[0]!.length + unknowns[1]!.length
  unknowns.forEach((rows, p) => {
    unknowns.forEach((columns, q) => {
      const [j, k] = [joints[p]!, joints[q]!]
      if (matrix.place[j]! < matrix.place[k]!) return
      const [target, width] = [blockOf(matrix, j, k), matrix.sizes[k]!]
      for (let a = 0; a < rows.length; a++) {
        const row = rows[a]!
        if (fixed[row]) continue
        const from = (a + p * unknowns[0]!.length) * size + q * unknowns[0]!.length
        const to = (row - offsets[j]!) * width - offsets[k]!
        for (let b = 0; b < columns.length; b++)
          if (!fixed[columns[b]!]) target[to + columns[b]!]! += between[from + b]!
      }
    })
  })
}

/** Stiffness of both ends in the building frame, what lies between them free. */
function stiffnessOfEnds({ stiffness: { matrix, ends }, cosine, sine }: PlacedRun): Float64Array {
  const [first, last] = [ends[0]!.block, ends[1]!.block]
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
