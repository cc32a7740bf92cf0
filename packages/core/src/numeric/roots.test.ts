import { describe, expect, it } from 'vitest'
import { bisect, brent, firstRoot } from './roots.js'

describe('roots', () => {
  const cases = [
    // function, bracket, expected, origin
    ['x² − 2', (x: number) => x * x - 2, 0, 2, Math.SQRT2, 'closed form'],
    ['cos x − x', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607, 'published (Dottie number)'],
    ['eˣ − 10', (x: number) => Math.exp(x) - 10, 0, 5, Math.LN10, 'closed form'],
    ['(x − 1)⁷', (x: number) => (x - 1) ** 7, 0, 3, 1, 'closed form, flat at the root'],
  ] as const
  it.each(cases)('Brent and halving find the root of %s', (_, f, from, to, expected) => {
    expect(bisect(f, from, to).at).toBeCloseTo(expected, 11)
    // The flat root is only known to the seventh root of rounding: (1e-16)^(1/7) ≈ 5e-3.
    const digits = Math.abs(f(expected + 1e-3)) < 1e-15 ? 2 : 11
    expect(brent(f, from, to).at).toBeCloseTo(expected, digits)
  })

  it('Brent needs fewer than half the evaluations of halving', () => {
    let calls = 0
    const f = (x: number) => {
      calls++
      return Math.exp(x) - 10
    }
    brent(f, 0, 5)
    const byBrent = calls
    calls = 0
    bisect(f, 0, 5)
    expect(byBrent).toBeLessThan(calls / 2)
  })

  it('marching stops at the first of several roots', () =>
    expect(firstRoot(Math.sin, 1, 20, 100)?.at).toBeCloseTo(Math.PI, 11))

  it('a function that keeps its sign has no first root', () =>
    expect(firstRoot(x => x * x + 1, -3, 3, 50)).toBeUndefined())

  it('a bracket without a change of sign is a bug', () =>
    expect(() => brent(x => x * x + 1, -1, 1)).toThrow('change of sign'))

  it('a function without a value is a bug', () =>
    expect(() => bisect(() => Number.NaN, 0, 1)).toThrow('has values'))
})
