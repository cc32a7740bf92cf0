import {
  factorSquare,
  solveLower,
  solveRows,
  solveUpper,
  subtractColumns,
  subtractProduct,
  subtractRows,
  subtractSquare,
} from './block-kernels.js'

/**
 * A symmetric positive matrix of dense blocks over a small graph: here a block is all nodes of one plan position, and
 * the graph is the plan. Blocks are row-major; block (i, j) has the rows of i and the columns of j. Sizes are multiples
 * of six; of a block on the diagonal what lies on and under it counts.
 */
export interface BlockMatrix {
  readonly sizes: readonly number[]
  /** Elimination order: `place[block]`. */
  readonly place: Int32Array
  readonly order: Int32Array
  /** Blocks at the end of the order that are not eliminated: what is left of them is their stiffness without the others. */
  readonly kept: number
  /** Neighbours of a block that come after it in the order, soonest first, fill included. */
  readonly later: readonly (readonly number[])[]
  readonly diagonal: readonly Float64Array[]
  /** Block (later[j][p], j). */
  readonly below: readonly (readonly Float64Array[])[]
}

/** Room for a matrix over a graph, fill included, ordered by minimum degree weighted with block sizes. */
export function blockMatrix(
  sizes: readonly number[],
  edges: readonly (readonly [number, number])[],
  kept: readonly number[] = [],
): BlockMatrix {
  const { order, neighbours } = minimumDegree(sizes, edges, kept)
  const place = new Int32Array(sizes.length)
  order.forEach((block, i) => {
    place[block] = i
  })
  const later = neighbours.map(each => each.sort((a, b) => place[a]! - place[b]!))
  return {
    sizes,
    place,
    order,
    kept: kept.length,
    later,
    diagonal: sizes.map(size => new Float64Array(size * size)),
    below: later.map((rows, j) => rows.map(i => new Float64Array(sizes[i]! * sizes[j]!))),
  }
}

/** Block (i, j), i after j in the order or j itself. */
export const blockOf = ({ later, diagonal, below }: BlockMatrix, i: number, j: number): Float64Array =>
  i === j ? diagonal[i]! : below[j]![later[j]!.indexOf(i)]!

function minimumDegree(
  sizes: readonly number[],
  edges: readonly (readonly [number, number])[],
  kept: readonly number[],
) {
  const around = sizes.map(() => new Set<number>())
  for (const [a, b] of edges)
    if (a !== b) {
      around[a]!.add(b)
      around[b]!.add(a)
    }
  const neighbours: number[][] = sizes.map(() => [])
  const order = new Int32Array(sizes.length)
  const left = new Set(sizes.keys())
  for (const block of kept) left.delete(block)
  const degree = sizes.map((_, i) => weight(sizes, around[i]!))
  for (let step = 0; step < sizes.length; step++) {
    let best = kept[step - sizes.length + kept.length] ?? -1
    if (best < 0) for (const i of left) if (best < 0 || degree[i]! < degree[best]!) best = i
    left.delete(best)
    order[step] = best
    neighbours[best] = [...around[best]!]
    for (const i of neighbours[best]!) {
      around[i]!.delete(best)
      for (const j of neighbours[best]!) if (i !== j) around[i]!.add(j)
      degree[i] = weight(sizes, around[i]!)
    }
  }
  return { order, neighbours }
}

function weight(sizes: readonly number[], set: ReadonlySet<number>): number {
  let sum = 0
  for (const i of set) sum += sizes[i]!
  return sum
}

export type Factored = 'factored' | 'not positive' | 'cancelled'

/** Cholesky factor in place, block by block: diagonal L, below L. `goOn` is asked before every block. */
export function factorBlocks(matrix: BlockMatrix, goOn: (share: number) => boolean): Factored {
  const { order, kept, later, sizes, diagonal, below } = matrix
  const last = order.length - kept
  for (let step = 0; step < last; step++) {
    if (!goOn(step / last)) return 'cancelled'
    const k = order[step]!
    const [size, rows] = [sizes[k]!, later[k]!]
    if (factorSquare(diagonal[k]!, size) !== undefined) return 'not positive'
    rows.forEach((i, p) => {
      solveRows(diagonal[k]!, size, below[k]![p]!, sizes[i]!)
    })
    rows.forEach((j, q) => {
      const right = below[k]![q]!
      subtractSquare(diagonal[j]!, right, sizes[j]!, size)
      for (let p = q + 1; p < rows.length; p++)
        subtractProduct(blockOf(matrix, rows[p]!, j), below[k]![p]!, right, sizes[rows[p]!]!, sizes[j]!, size)
    })
  }
  return 'factored'
}

/** Solves L·y = x in place; `offsets[block]` is where its unknowns begin. Kept blocks get what the others push onto them. */
export function forwardBlocks(matrix: BlockMatrix, x: Float64Array, offsets: ArrayLike<number>): void {
  const { order, kept, later, sizes, diagonal, below } = matrix
  for (let step = 0; step < order.length - kept; step++) {
    const k = order[step]!
    const [size, at] = [sizes[k]!, offsets[k]!]
    solveLower(diagonal[k]!, size, x, at)
    later[k]!.forEach((i, p) => {
      subtractRows(x, offsets[i]!, sizes[i]!, below[k]![p]!, 0, size, x, at, size)
    })
  }
}

/** Solves Lᵀ·x = y in place; kept blocks are known. */
export function backwardBlocks(matrix: BlockMatrix, x: Float64Array, offsets: ArrayLike<number>): void {
  const { order, kept, later, sizes, diagonal, below } = matrix
  for (let step = order.length - kept - 1; step >= 0; step--) {
    const k = order[step]!
    const [size, at] = [sizes[k]!, offsets[k]!]
    later[k]!.forEach((i, p) => {
      subtractColumns(x, at, size, below[k]![p]!, 0, size, x, offsets[i]!, sizes[i]!)
    })
    solveUpper(diagonal[k]!, size, x, at)
  }
}
