/**
 * L·D·Lᵀ of a symmetric banded matrix in place, and how many of its pivots are negative: by Sylvester's law of inertia
 * the number of negative eigenvalues. Lower band by rows: entry (i, j) lies at i·width + (j − i + width − 1).
 * Afterwards the diagonal holds D and the rest L. It stops at `enough` of them, leaving the matrix half done.
 */
export function countNegativePivots(
  band: Float64Array,
  size: number,
  width: number,
  enough = Number.POSITIVE_INFINITY,
): number {
  let negative = 0
  for (let i = 0; i < size; i++) {
    const first = Math.max(0, i - width + 1)
    const row = i * width + width - 1 - i
    let pivot = band[row + i]!
    for (let j = first; j < i; j++) {
      const other = j * width + width - 1 - j
      let sum = band[row + j]!
      for (let k = Math.max(first, j - width + 1); k < j; k++) sum -= band[row + k]! * band[other + k]!
      band[row + j] = sum
    }
    for (let j = first; j < i; j++) {
      const value = band[row + j]!
      const scaled = value / band[j * width + width - 1]!
      pivot -= value * scaled
      band[row + j] = scaled
    }
    band[row + i] = pivot
    if (pivot < 0 && ++negative >= enough) break
  }
  return negative
}

/** Solves with what `countNegativePivots` left behind; the right side is overwritten with the answer. */
export function solveBanded(
  factored: Float64Array,
  right: Float64Array,
  size: number,
  width: number,
): Float64Array {
  for (let i = 0; i < size; i++)
    for (let j = Math.max(0, i - width + 1); j < i; j++)
      right[i]! -= factored[i * width + j - i + width - 1]! * right[j]!
  for (let i = 0; i < size; i++) right[i]! /= factored[i * width + width - 1]!
  for (let i = size - 1; i >= 0; i--)
    for (let j = Math.max(0, i - width + 1); j < i; j++)
      right[j]! -= factored[i * width + j - i + width - 1]! * right[i]!
  return right
}
