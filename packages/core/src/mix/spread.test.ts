import { describe, expect, it } from 'vitest'
import { patSlenderness, spreadYieldStress } from './index.js'

describe('spreadYieldStress', () => {
  it('of a pat 200 mm across (independent arithmetic of [RousselCoussot2005])', () =>
    // ρ 2000, V 2.74e-4, R 0.1: 26.23 Pa, printed to 0.01 Pa
    expect(Math.abs(spreadYieldStress(0.2, 2.74e-4, 2000) - 26.23)).toBeLessThan(0.006))
  it('has the coefficient 225/(128·π²) = 0.178104 (closed form)', () =>
    expect(spreadYieldStress(2, 1, 1 / 9.81)).toBeCloseTo(0.178104, 6))
  it('falls with the fifth power of the radius (limit)', () =>
    expect(spreadYieldStress(0.4, 2.74e-4, 2000) * 32).toBeCloseTo(spreadYieldStress(0.2, 2.74e-4, 2000), 9))
  it('comes with the slenderness of the pat', () =>
    // hand: 1e-3·π m³ over a circle of radius 0.1 m is 0.1 m high: as high as its radius
    expect(patSlenderness(0.2, 1e-3 * Math.PI)).toBeCloseTo(1, 12))
})
