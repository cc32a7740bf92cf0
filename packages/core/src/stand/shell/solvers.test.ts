import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { backwardBlocks, blockMatrix, blockOf, factorBlocks, forwardBlocks } from './block-cholesky.js'
import { largestEigenvalue, largestOfTridiagonal } from './lanczos.js'

/** A positive matrix over a graph: random symmetric blocks, its diagonal above the sum of its row. */
function randomSystem(
  sizes: readonly number[],
  edges: readonly (readonly [number, number])[],
  seed: number,
  kept: readonly number[] = [],
) {
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
  const matrix = blockMatrix(sizes, edges, kept)
  for (let i = 0; i < sizes.length; i++)
    for (const j of [i, ...matrix.later[i]!])
      for (let a = 0; a < sizes[j]!; a++)
        for (let b = 0; b < sizes[i]!; b++)
          blockOf(matrix, j, i)[a * sizes[i]! + b] = full[starts[j]! + a]![starts[i]! + b]!
  return { matrix, full, starts, total }
}

const graphs = [
  fc.array(fc.constantFrom(6, 12, 18), { minLength: 2, maxLength: 8 }),
  fc.array(fc.tuple(fc.nat(7), fc.nat(7)), { maxLength: 14 }),
  fc.integer({ min: 1, max: 1000 }),
] as const
const within = (sizes: readonly number[], pairs: readonly (readonly [number, number])[]) =>
  pairs.filter(([a, b]) => a !== b && a < sizes.length && b < sizes.length)

describe('the block Cholesky factor', () => {
  it('solves any positive system over any small graph', () =>
    fc.assert(
      fc.property(...graphs, (sizes, pairs, seed) => {
        const { matrix, full, starts, total } = randomSystem(sizes, within(sizes, pairs), seed)
        const right = Float64Array.from({ length: total }, (_, i) => Math.cos(i))
        const x = right.slice()
        expect(factorBlocks(matrix, () => true)).toBe('factored')
        forwardBlocks(matrix, x, starts)
        backwardBlocks(matrix, x, starts)
        full.forEach((row, i) => {
          const sum = row.reduce((total, value, j) => total + value * x[j]!, 0)
          expect(Math.abs(sum - right[i]!)).toBeLessThan(1e-9)
        })
      }),
      { numRuns: 60 },
    ))

  it('hands kept blocks what is left of them, and what is pushed onto them', () =>
    fc.assert(
      fc.property(...graphs, (sizes, pairs, seed) => {
        const kept = sizes.length - 1
        const { matrix, full, starts, total } = randomSystem(sizes, within(sizes, pairs), seed, [kept])
        const x = Float64Array.from({ length: total }, (_, i) => Math.cos(i))
        const right = x.slice()
        factorBlocks(matrix, () => true)
        forwardBlocks(matrix, x, starts)
        // the kept block solved by itself, densely, is the end of the whole solution
        const size = sizes[kept]!
        const alone = blockMatrix([size], [])
        alone.diagonal[0]!.set(matrix.diagonal[kept]!)
        const end = x.slice(starts[kept])
        factorBlocks(alone, () => true)
        forwardBlocks(alone, end, [0])
        backwardBlocks(alone, end, [0])
        x.set(end, starts[kept])
        backwardBlocks(matrix, x, starts)
        full.forEach((row, i) => {
          const sum = row.reduce((total, value, j) => total + value * x[j]!, 0)
          expect(Math.abs(sum - right[i]!)).toBeLessThan(1e-9)
        })
      }),
      { numRuns: 40 },
    ))

  it('says that a matrix is not positive', () => {
    const matrix = blockMatrix([6], [])
    for (let i = 0; i < 6; i++) matrix.diagonal[0]![7 * i] = i === 4 ? -1 : 1
    expect(factorBlocks(matrix, () => true)).toBe('not positive')
  })

  it('stops when told to, before any block', () => {
    const { matrix } = randomSystem(
      [6, 6, 6],
      [
        [0, 1],
        [1, 2],
      ],
      1,
    )
    let calls = 0
    expect(factorBlocks(matrix, () => ++calls < 3)).toBe('cancelled')
    expect(calls).toBe(3)
  })
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
  it('is found in fewer steps from near its vector, and from the vector of the next one too', () => {
    const size = 400
    const apply = (x: Float64Array) => x.map((value, i) => value / (1 + 0.02 * i))
    const from = (start?: Float64Array) =>
      largestEigenvalue(size, apply, () => true, { tolerance: 1e-6, ...(start ? { start } : {}) })!
    const unit = (at: number) => new Float64Array(size).map((_, i) => (i === at ? 1 : 0))
    const [anywhere, near, next] = [from(), from(unit(0)), from(unit(1))]
    expect(near.steps).toBeLessThan(0.9 * anywhere.steps)
    for (const { value } of [anywhere, near, next]) expect(value).toBeCloseTo(1, 6)
  })
})
