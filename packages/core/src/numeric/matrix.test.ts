import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { invert, multiply, solveLinear, transpose } from './matrix.js'

describe('small dense linear algebra', () => {
  it('solves a system that needs its rows exchanged', () =>
    // hand: 2y = 4 → y = 2; x + y = 3 → x = 1
    expect(
      solveLinear(
        [
          [0, 2],
          [1, 1],
        ],
        [4, 3],
      ),
    ).toEqual([1, 2]))

  it('inverts the 4 × 4 Hilbert matrix to its known integers', () => {
    // published: the inverse of the Hilbert matrix is integer, corner 16, middle 6480 (Choi 1983, from memory).
    // Condition number 1.6e4: four of sixteen digits are lost.
    const hilbert = [0, 1, 2, 3].map(i => [0, 1, 2, 3].map(j => 1 / (i + j + 1)))
    const inverse = invert(hilbert)!
    expect(inverse[0]![0]).toBeCloseTo(16, 8)
    expect(inverse[2]![2]).toBeCloseTo(6480, 6)
    expect(inverse[1]![3]).toBeCloseTo(1680, 6)
  })

  it('has no answer for a singular system', () =>
    expect(
      solveLinear(
        [
          [1, 2],
          [2, 4],
        ],
        [1, 2],
      ),
    ).toBeUndefined())

  it('solving undoes multiplying, at any scale', () => {
    const entry = fc.double({ min: -1, max: 1, noNaN: true })
    const systems = fc.tuple(
      fc.array(fc.array(entry, { minLength: 3, maxLength: 3 }), { minLength: 3, maxLength: 3 }),
      fc.array(entry, { minLength: 3, maxLength: 3 }),
      fc.constantFrom(1e-6, 1, 1e9),
    )
    fc.assert(
      fc.property(systems, ([rows, wanted, scale]) => {
        // Diagonally dominant, so that the condition number stays under ten.
        const matrix = rows.map((row, i) =>
          row.map((v, j) => scale * (i === j ? v + Math.sign(v || 1) * 4 : v)),
        )
        const right = multiply(matrix, transpose([wanted])).map(row => row[0]!)
        const solved = solveLinear(matrix, right)!
        for (const [i, value] of wanted.entries()) expect(solved[i]).toBeCloseTo(value, 12)
      }),
    )
  })
})
