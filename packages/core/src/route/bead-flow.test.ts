import { describe, expect, it } from 'vitest'
import { beadFlow, formulas, riseRate } from './index.js'

const mm = (width: number, height: number) => ({ width, height })

describe('beadFlow', () => {
  it.each([
    // w, h [mm], v [mm/s], flow [L/min]; closed form, computed independently, printed to 0.0001
    [50, 15, 150, 6.3154],
    [60, 20, 100, 6.685],
    [40, 10, 83.333, 1.8927],
  ] as const)('%d × %d mm at %d mm/s needs %d L/min', (width, height, speed, flow) =>
    expect(Math.abs(beadFlow(mm(width, height), speed) * 6e-5 - flow)).toBeLessThanOrEqual(0.00005),
  )
  it('grows with the speed and stops with it', () => {
    expect(beadFlow(mm(50, 15), 300)).toBeCloseTo(2 * beadFlow(mm(50, 15), 150), 9)
    expect(beadFlow(mm(50, 15), 0)).toBe(0)
  })
})

describe('riseRate', () => {
  it('is 0.24 m per hour at 20 mm every five minutes', () =>
    // hand: 0.020 m · 12 per hour
    expect(riseRate(0.02, 300) * 3600).toBeCloseTo(0.24, 12))
  it('halves where a layer takes twice as long, and stacks layers: 150 of 20 mm at 5 min stand 3 m in 12.5 h', () => {
    // closed form: height over time is layers times height over layers times time.
    expect(riseRate(0.02, 600)).toBeCloseTo(riseRate(0.02, 300) / 2, 15)
    expect(riseRate(0.02, 300) * 12.5 * 3600).toBeCloseTo(150 * 0.02, 12)
  })
  it('is offered in metres per hour', () =>
    expect(formulas[0]!.calculate({ height: 20, 'layer-time': 300 })).toBeCloseTo(0.24, 12))
})
