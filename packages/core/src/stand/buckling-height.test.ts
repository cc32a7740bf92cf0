import { describe, expect, it } from 'vitest'
import { type BucklingHeight, bucklingHeight, lengthUnit, type RisingWall } from './buckling-height.js'
import type { Curing } from './curing.js'
import { GREENHILL, suikerFitHeight } from './greenhill.js'

/** A wall whose L₀ and rise are 1: D₀ = 1, ρgh = 1. */
const unitWall = (
  curing: Curing,
  support: RisingWall['support'] = { kind: 'free' },
  poisson = 0.3,
): RisingWall => ({
  thickness: (12 * (1 - poisson ** 2)) ** (1 / 3),
  density: 1 / (12 * (1 - poisson ** 2)) ** (1 / 3),
  gravity: 1,
  poisson,
  curing,
  rise: 1,
  support,
})
const linear = (rate: number): Curing => ({ kind: 'linear', start: 1, rate })
const heightOf = (answer: BucklingHeight) => (answer.kind === 'buckles' ? answer.height : Number.NaN)
const relative = (found: number, expected: number) => Math.abs(found / expected - 1)

describe('a free wall that cures as it rises', () => {
  it('has the length unit 1 in these tests', () => expect(lengthUnit(unitWall(linear(0)))).toBeCloseTo(1, 12))

  // independent: initial-value integration and finite elements of another code agree, tolerance 1e-4 there.
  it.each([
    [0.01, 1.996727],
    [0.05, 2.038071],
    [0.1, 2.089394],
    [0.25, 2.240796],
    [0.5, 2.483944],
    [1, 2.935617],
    [1.5, 3.345851],
    [2, 3.721711],
    [4, 4.986423],
    [5, 5.521322],
    [10, 7.679004],
    [50, 17.019794],
    [100, 24.055819],
  ])('buckles as integrated, linear curing %d', (rate, expected) =>
    expect(relative(heightOf(bucklingHeight(unitWall(linear(rate)), 60)), expected)).toBeLessThan(1e-4),
  )

  // independent: another code's integration, five decimals printed.
  it.each([
    [2, 0.05, 2.03599],
    [2, 0.1, 2.08122],
    [2, 0.25, 2.19307],
    [2, 0.5, 2.31708],
    [2, 1, 2.43302],
    [2, 2, 2.49049],
    [2, 5, 2.50236],
    [10, 0.05, 2.41626],
    [10, 0.1, 2.76925],
    [10, 0.25, 3.46199],
    [10, 0.5, 3.95967],
    [10, 1, 4.2159],
    [10, 2, 4.27438],
    [10, 5, 4.2794],
  ])('buckles as integrated, curing exponentially to %d-fold at %d', (end, rate, expected) => {
    const curing: Curing = { kind: 'exponential', start: 1, end, rate }
    expect(relative(heightOf(bucklingHeight(unitWall(curing), 60)), expected)).toBeLessThan(1e-4)
  })

  it('grows with the root of the curing rate when curing rules: 2.404826·√ξ̄ (closed form, zero of J₀)', () =>
    // next term of the asymptote is of order 1/ξ̄^1.5: 1 in 1000 left at 1000
    expect(
      relative(heightOf(bucklingHeight(unitWall(linear(1000)), 200)), 2.404826 * Math.sqrt(1000)),
    ).toBeLessThan(1e-3))

  it('buckles at the end stiffness when curing is over at once: r^⅓ of no curing (closed form)', () => {
    const curing: Curing = { kind: 'exponential', start: 1, end: 8, rate: 1e6 }
    // the youngest 1e-6 of the height is softer; 40 elements see none of it
    expect(relative(heightOf(bucklingHeight(unitWall(curing), 20)), 2 * GREENHILL ** (1 / 3))).toBeLessThan(
      1e-5,
    )
  })

  it('agrees with the published fit within its 4 % for slow curing [Suiker2018]', () => {
    for (const rate of [0, 0.1, 0.5, 1, 2, 3, 4, 5])
      expect(
        relative(suikerFitHeight(rate), heightOf(bucklingHeight(unitWall(linear(rate)), 20))),
      ).toBeLessThan(0.04)
  })

  it('is the same for a quadratic law without its square and a table of a straight line', () => {
    const straight = heightOf(bucklingHeight(unitWall(linear(0.5)), 20))
    const square: Curing = { kind: 'quadratic', start: 1, rate: 0.5, bend: 0 }
    const rows = [
      { age: 0, modulus: 1 },
      { age: 50, modulus: 26 },
    ]
    expect(heightOf(bucklingHeight(unitWall(square), 20))).toBeCloseTo(straight, 9)
    expect(heightOf(bucklingHeight(unitWall({ kind: 'table', rows }), 20))).toBeCloseTo(straight, 9)
  })
})

describe('a wall held at both ends that cures as it rises', () => {
  // independent: computed apart, two rows twice, the others once. Four decimals.
  it.each([
    ['simple', 10, 0.1, 2.2557],
    ['clamped', 10, 0.1, 2.3817],
    ['simple', 10, 0.5, 2.7493],
    ['clamped', 10, 0.5, 3.0073],
    ['simple', 10, 1, 3.3672],
    ['clamped', 10, 1, 4.0202],
    ['simple', 10, 2, 4.7049],
  ] as const)('buckles as computed elsewhere: %s, %d wide, curing %d', (kind, length, rate, expected) =>
    expect(
      relative(heightOf(bucklingHeight(unitWall(linear(rate), { kind, length }), 40)), expected),
    ).toBeLessThan(1e-3),
  )

  it.each([
    ['clamped', 10, 2],
    ['simple', 10, 5],
    ['clamped', 10, 5],
  ] as const)('never buckles when it is %s, %d wide and cures at %d', (kind, length, rate) =>
    expect(bucklingHeight(unitWall(linear(rate), { kind, length }), 100)).toEqual({
      kind: 'none',
      upTo: 100,
    }),
  )

  // closed form of the local limit: ξ̄ ≥ b̄²/4π² simply supported, b̄²/71.905 clamped. Below it the foot must buckle somewhere.
  it.each([
    ['simple', 2, 0.1013],
    ['simple', 3, 0.228],
    ['clamped', 2, 0.0556],
  ] as const)(
    'buckles when it is %s, %d wide and cures slower than its foot asks, and not when faster',
    (kind, length, threshold) => {
      const at = (share: number) =>
        bucklingHeight(unitWall(linear(share * threshold), { kind, length }), 120).kind
      expect(at(0.8)).toBe('buckles')
      expect(at(1.02)).toBe('none')
    },
  )

  it('lies between free and clamped when simply supported [Suiker2018]', () => {
    for (const length of [3, 6, 12]) {
      const free = heightOf(bucklingHeight(unitWall(linear(0)), 30))
      const simple = heightOf(bucklingHeight(unitWall(linear(0), { kind: 'simple', length }), 30))
      const clamped = heightOf(bucklingHeight(unitWall(linear(0), { kind: 'clamped', length }), 30))
      expect(free).toBeLessThan(simple)
      expect(simple).toBeLessThan(clamped)
    }
  })
})
