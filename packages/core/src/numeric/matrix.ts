import { assert } from '../result/index.js'

/** A small dense matrix, row by row. */
export type Matrix = readonly (readonly number[])[]

/** A·x = b by Gaussian elimination with partial pivoting; none when A is singular to working precision. */
export function solveLinear(matrix: Matrix, right: readonly number[]): number[] | undefined {
  const solved = eliminate(
    matrix,
    right.map(value => [value]),
  )
  return solved?.map(row => row[0]!)
}

/** A⁻¹, or none when A is singular to working precision. */
export function invert(matrix: Matrix): number[][] | undefined {
  return eliminate(
    matrix,
    matrix.map((_, i) => matrix.map((_, j) => (i === j ? 1 : 0))),
  )
}

export const transpose = (matrix: Matrix): number[][] =>
  (matrix[0] ?? []).map((_, column) => matrix.map(row => row[column]!))

export const multiply = (left: Matrix, right: Matrix): number[][] =>
  left.map(row => (right[0] ?? []).map((_, column) => dot(row, right, column)))

/** Solves for many right-hand sides at once; the matrices passed in stay untouched. */
function eliminate(matrix: Matrix, right: Matrix): number[][] | undefined {
  const size = matrix.length
  assert(
    right.length === size && matrix.every(row => row.length === size),
    'a linear system is square and as tall as its right-hand side',
  )
  const rows = matrix.map((row, i) => [...row, ...right[i]!])
  const largest = Math.max(...matrix.flat().map(Math.abs), Number.MIN_VALUE)
  for (let column = 0; column < size; column++) {
    const pivot = pivotRow(rows, column)
    if (!(Math.abs(rows[pivot]![column]!) > largest * size * Number.EPSILON)) return undefined
    ;[rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!]
    clearColumn(rows, column)
  }
  return rows.map((row, i) => row.slice(size).map(value => value / row[i]!))
}

function pivotRow(rows: readonly number[][], column: number): number {
  let best = column
  for (let row = column + 1; row < rows.length; row++)
    if (Math.abs(rows[row]![column]!) > Math.abs(rows[best]![column]!)) best = row
  return best
}

function clearColumn(rows: number[][], column: number): void {
  const pivot = rows[column]!
  for (const [index, row] of rows.entries()) {
    const share = row[column]! / pivot[column]!
    if (index === column || share === 0) continue
    for (let i = column; i < row.length; i++) row[i]! -= share * pivot[i]!
  }
}

const dot = (row: readonly number[], matrix: Matrix, column: number): number =>
  row.reduce((sum, value, k) => sum + value * matrix[k]![column]!, 0)
