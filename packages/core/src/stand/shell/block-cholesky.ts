import { assert } from '../../result/index.js'

/**
 * A symmetric positive matrix of dense blocks over a small graph: here a block is all nodes of one plan position, and
 * the graph is the plan. Blocks are row-major; block (i, j) has the rows of i and the columns of j.
 */
export interface BlockMatrix {
  readonly sizes: readonly number[]
  /** Elimination order: `place[block]`. */
  readonly place: Int32Array
  readonly order: Int32Array
  /** Neighbours of a block that are eliminated after it, fill included. */
  readonly later: readonly (readonly number[])[]
  readonly diagonal: readonly Float64Array[]
  /** `below[j].get(i)`: block (i, j) with i eliminated after j. */
  readonly below: readonly Map<number, Float64Array>[]
}

/** Room for a matrix over a graph, fill included, ordered by minimum degree weighted with block sizes. */
export function blockMatrix(
  sizes: readonly number[],
  edges: readonly (readonly [number, number])[],
): BlockMatrix {
  const { order, later } = minimumDegree(sizes, edges)
  const place = new Int32Array(sizes.length)
  order.forEach((block, i) => {
    place[block] = i
  })
  return {
    sizes,
    place,
    order,
    later,
    diagonal: sizes.map(size => new Float64Array(size * size)),
    below: later.map(
      (rows, j) => new Map(rows.map(i => [i, new Float64Array(sizes[i]! * sizes[j]!)] as const)),
    ),
  }
}

/** Adds to entry (a of block i, b of block j); of an off-diagonal pair only one triangle is kept. */
export function addEntry(
  matrix: BlockMatrix,
  i: number,
  a: number,
  j: number,
  b: number,
  amount: number,
): void {
  if (i === j) {
    matrix.diagonal[i]![a * matrix.sizes[i]! + b]! += amount
    return
  }
  if (matrix.place[i]! > matrix.place[j]!) matrix.below[j]!.get(i)![a * matrix.sizes[j]! + b]! += amount
}

function minimumDegree(sizes: readonly number[], edges: readonly (readonly [number, number])[]) {
  const neighbours = sizes.map(() => new Set<number>())
  for (const [a, b] of edges)
    if (a !== b) {
      neighbours[a]!.add(b)
      neighbours[b]!.add(a)
    }
  const later: number[][] = sizes.map(() => [])
  const order = new Int32Array(sizes.length)
  const left = new Set(sizes.keys())
  const degree = sizes.map((_, i) => weight(sizes, neighbours[i]!))
  for (let step = 0; step < sizes.length; step++) {
    let best = -1
    for (const i of left) if (best < 0 || degree[i]! < degree[best]!) best = i
    left.delete(best)
    order[step] = best
    later[best] = [...neighbours[best]!]
    for (const i of later[best]!) {
      neighbours[i]!.delete(best)
      for (const j of later[best]!) if (i !== j) neighbours[i]!.add(j)
      degree[i] = weight(sizes, neighbours[i]!)
    }
  }
  return { order, later }
}

function weight(sizes: readonly number[], set: ReadonlySet<number>): number {
  let sum = 0
  for (const i of set) sum += sizes[i]!
  return sum
}

/**
 * Cholesky factor in place, block by block: diagonal L, below L. Answers false when `goOn` does.
 * A pivot that is not positive is a broken invariant: the stiffness of a clamped wall is positive.
 */
export function factorBlocks(matrix: BlockMatrix, goOn: (share: number) => boolean): boolean {
  const { order, later, sizes, diagonal, below, place } = matrix
  for (let step = 0; step < order.length; step++) {
    if (step % 16 === 0 && !goOn(step / order.length)) return false
    const k = order[step]!
    const size = sizes[k]!
    choleskyInPlace(diagonal[k]!, size)
    const rows = [...later[k]!].sort((a, b) => place[a]! - place[b]!)
    for (const i of rows) solveRows(diagonal[k]!, size, below[k]!.get(i)!, sizes[i]!)
    for (let q = 0; q < rows.length; q++) {
      const j = rows[q]!
      const right = below[k]!.get(j)!
      subtractProduct(diagonal[j]!, right, right, sizes[j]!, sizes[j]!, size)
      for (let p = q + 1; p < rows.length; p++) {
        const i = rows[p]!
        subtractProduct(below[j]!.get(i)!, below[k]!.get(i)!, right, sizes[i]!, sizes[j]!, size)
      }
    }
  }
  return true
}

/** Solves L·y = right in place; the vector is a list of block vectors. */
export function forwardBlocks(
  { order, later, sizes, diagonal, below }: BlockMatrix,
  right: Float64Array[],
): void {
  for (const k of order) {
    const [size, factor, x] = [sizes[k]!, diagonal[k]!, right[k]!]
    for (let a = 0; a < size; a++) {
      let sum = x[a]!
      for (let b = 0; b < a; b++) sum -= factor[a * size + b]! * x[b]!
      x[a] = sum / factor[a * size + a]!
    }
    for (const i of later[k]!) {
      const [block, y] = [below[k]!.get(i)!, right[i]!]
      for (let a = 0; a < y.length; a++) {
        let sum = 0
        for (let b = 0; b < size; b++) sum += block[a * size + b]! * x[b]!
        y[a]! -= sum
      }
    }
  }
}

/** Solves Lᵀ·x = right in place. */
export function backwardBlocks(
  { order, later, sizes, diagonal, below }: BlockMatrix,
  right: Float64Array[],
): void {
  for (let step = order.length - 1; step >= 0; step--) {
    const k = order[step]!
    const [size, factor, x] = [sizes[k]!, diagonal[k]!, right[k]!]
    for (const i of later[k]!) {
      const [block, y] = [below[k]!.get(i)!, right[i]!]
      for (let a = 0; a < y.length; a++) {
        const value = y[a]!
        for (let b = 0; b < size; b++) x[b]! -= block[a * size + b]! * value
      }
    }
    for (let a = size - 1; a >= 0; a--) {
      const value = x[a]! / factor[a * size + a]!
      x[a] = value
      for (let b = 0; b < a; b++) x[b]! -= factor[a * size + b]! * value
    }
  }
}

function choleskyInPlace(a: Float64Array, size: number): void {
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * size + j]!
      for (let k = 0; k < j; k++) sum -= a[i * size + k]! * a[j * size + k]!
      if (i === j) {
        assert(sum > 0, `the stiffness of a clamped wall is positive (pivot ${sum})`)
        a[i * size + i] = Math.sqrt(sum)
      } else a[i * size + j] = sum / a[j * size + j]!
    }
  }
}

/** rows ← rows·L⁻ᵀ */
function solveRows(factor: Float64Array, size: number, rows: Float64Array, count: number): void {
  for (let r = 0; r < count; r++) {
    const at = r * size
    for (let j = 0; j < size; j++) {
      let sum = rows[at + j]!
      const row = j * size
      for (let k = 0; k < j; k++) sum -= rows[at + k]! * factor[row + k]!
      rows[at + j] = sum / factor[row + j]!
    }
  }
}

/** c −= a·bᵀ in tiles of three by three: sizes are multiples of six unknowns. */
function subtractProduct(
  c: Float64Array,
  a: Float64Array,
  b: Float64Array,
  rows: number,
  columns: number,
  inner: number,
): void {
  for (let i = 0; i < rows; i += 3) {
    const a0 = i * inner
    const a1 = a0 + inner
    const a2 = a1 + inner
    for (let j = 0; j < columns; j += 3) {
      const b0 = j * inner
      const b1 = b0 + inner
      const b2 = b1 + inner
      let [s00, s01, s02, s10, s11, s12, s20, s21, s22] = [0, 0, 0, 0, 0, 0, 0, 0, 0]
      for (let k = 0; k < inner; k++) {
        const [x0, x1, x2] = [a[a0 + k]!, a[a1 + k]!, a[a2 + k]!]
        const [y0, y1, y2] = [b[b0 + k]!, b[b1 + k]!, b[b2 + k]!]
        s00 += x0 * y0
        s01 += x0 * y1
        s02 += x0 * y2
        s10 += x1 * y0
        s11 += x1 * y1
        s12 += x1 * y2
        s20 += x2 * y0
        s21 += x2 * y1
        s22 += x2 * y2
      }
      const c0 = i * columns + j
      const c1 = c0 + columns
      const c2 = c1 + columns
      c[c0]! -= s00
      c[c0 + 1]! -= s01
      c[c0 + 2]! -= s02
      c[c1]! -= s10
      c[c1 + 1]! -= s11
      c[c1 + 2]! -= s12
      c[c2]! -= s20
      c[c2 + 1]! -= s21
      c[c2 + 2]! -= s22
    }
  }
}
