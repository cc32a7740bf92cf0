import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { backwardBlocks, blockMatrix, factorBlocks, forwardBlocks } from './block-cholesky.js'
import { largestEigenvalue, largestOfTridiagonal } from './lanczos.js'

/** A positive matrix over a graph: random symmetric blocks, its diagonal above the sum of its row. */
function randomSystem(sizes: readonly number[], edges: readonly (readonly [number, number])[], seed: number) {
  const total = sizes.reduce((a, b) => a + b, 0)
  const starts = sizes.map((_, i) => sizes.slice(0, i).reduce((a, b) => a + b, 0))
  const full = Array.from({ length: total }, () => new Float64Array(total))
  const noise = (k: number) => Math.sin(seed + 12.9898 * k)
  for (const [i, j] of [...sizes.map((_, k) => [k, k] as const), ...edges])
    for (let a = 0; a < sizes[i]!; a++)
      for (let b = 0; b < sizes[j]!; b++) {
        const [row, column] = [starts[i]! + a, starts[j]! + b]
        full[row]![column] = full[column]![row] = noise(row * 7 + column * 3)
      }
  full.forEach((row, i) => {
    row[i] = 1 + row.reduce((sum, value) => sum + Math.abs(value), 0)
  })
  const matrix = blockMatrix(sizes, edges)
  sizes.forEach((size, i) => {
    for (let a = 0; a < size; a++)
      for (let b = 0; b < size; b++)
        matrix.diagonal[i]![a * size + b] = full[starts[i]! + a]![starts[i]! + b]!
    for (const [k, block] of matrix.below[i]!)
      for (let a = 0; a < sizes[k]!; a++)
        for (let b = 0; b < size; b++) block[a * size + b] = full[starts[k]! + a]![starts[i]! + b]!
  })
  return { matrix, full, starts, total }
}

describe('the block Cholesky factor', () => {
  it('solves any positive system over any small graph', () =>
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(3, 6, 12), { minLength: 2, maxLength: 8 }),
        fc.array(fc.tuple(fc.nat(7), fc.nat(7)), { maxLength: 14 }),
        fc.integer({ min: 1, max: 1000 }),
        (sizes, pairs, seed) => {
          const links = pairs.filter(([a, b]) => a !== b && a < sizes.length && b < sizes.length)
          const { matrix, full, starts, total } = randomSystem(sizes, links, seed)
          const right = Float64Array.from({ length: total }, (_, i) => Math.cos(i))
          const x = right.slice()
          const parts = sizes.map((size, i) => x.subarray(starts[i]!, starts[i]! + size))
          expect(factorBlocks(matrix, () => true)).toBe(true)
          forwardBlocks(matrix, parts)
          backwardBlocks(matrix, parts)
          full.forEach((row, i) => {
            const sum = row.reduce((total, value, j) => total + value * x[j]!, 0)
            expect(Math.abs(sum - right[i]!)).toBeLessThan(1e-9)
          })
        },
      ),
      { numRuns: 60 },
    ))
})

describe('the largest eigenvalue', () => {
  it('of the second-difference matrix is 2 + 2·cos(π/(n + 1)) (closed form)', () => {
    const size = 12
    const { value } = largestOfTridiagonal(new Array(size).fill(2), new Array(size - 1).fill(-1))
    expect(value).toBeCloseTo(2 + 2 * Math.cos(Math.PI / 13), 12)
  })
  it('of an operator is found with its vector', () => {
    const size = 200
    const found = largestEigenvalue(
      size,
      x => x.map((value, i) => value / (1 + i)),
      () => true,
      1e-10,
    )!
    expect(found.value).toBeCloseTo(1, 9)
    expect(Math.abs(found.vector[0]!)).toBeCloseTo(1, 6)
  })
})
