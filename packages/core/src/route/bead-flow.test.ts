import { describe, expect, it } from 'vitest'
import {
  beadFlow,
  beadPerimeter,
  beadSection,
  beadVolume,
  contactWidth,
  fillPitch,
  formulas,
  riseRate,
} from './index.js'

const mm = (width: number, height: number) => ({ width, height })

describe('beadSection', () => {
  it.each([
    // w, h [mm], area [mm²]; closed form, computed independently, printed to 0.001
    [50, 15, 701.715],
    [60, 20, 1114.159],
    [40, 10, 378.54],
    [30, 30, 706.858],
  ] as const)('%d × %d mm is %d mm²', (width, height, area) =>
    expect(Math.abs(beadSection(mm(width, height)) - area)).toBeLessThanOrEqual(0.0005),
  )

  it('is a circle when as high as wide', () =>
    expect(beadSection(mm(30, 30))).toBeCloseTo((Math.PI / 4) * 900, 9))
  it('is 93.56 % of its rectangle at 50 × 15 mm', () =>
    expect(beadSection(mm(50, 15)) / 750).toBeCloseTo(0.9356, 4))
  it('is bounded by its own perimeter as every plane figure is', () =>
    // hand: 2·35 + π·15 = 117.124; isoperimetric: 4πA ≤ P²
    {
      expect(beadPerimeter(mm(50, 15))).toBeCloseTo(117.124, 3)
      expect(4 * Math.PI * beadSection(mm(50, 15))).toBeLessThan(beadPerimeter(mm(50, 15)) ** 2)
    })
  it('rests on the width between its rounded sides', () => expect(contactWidth(mm(50, 15))).toBe(35))
})

describe('beadFlow', () => {
  it.each([
    // w, h [mm], v [mm/s], flow [L/min]; closed form, computed independently, printed to 0.0001
    [50, 15, 150, 6.3154],
    [60, 20, 100, 6.685],
    [40, 10, 83.333, 1.8927],
  ] as const)('%d × %d mm at %d mm/s needs %d L/min', (width, height, speed, flow) =>
    expect(Math.abs(beadFlow(mm(width, height), speed) * 6e-5 - flow)).toBeLessThanOrEqual(0.00005),
  )
  it('fills, over a second, the volume of the length laid in it', () =>
    expect(beadFlow(mm(50, 15), 150)).toBeCloseTo(beadVolume(mm(50, 15), 150), 9))
})

describe('fillPitch', () => {
  it('is 46.781 mm for 50 × 15 mm', () =>
    expect(Math.abs(fillPitch(mm(50, 15)) - 46.781)).toBeLessThan(0.0005))
  it('makes every bead fill its strip', () =>
    expect(fillPitch(mm(50, 15)) * 15).toBeCloseTo(beadSection(mm(50, 15)), 9))
  it('approaches the width as the bead gets flat', () => expect(fillPitch(mm(50, 1e-9))).toBeCloseTo(50, 6))
})

describe('riseRate', () => {
  it('is 0.24 m per hour at 20 mm every five minutes', () =>
    // hand: 0.020 m · 12 per hour
    expect(riseRate(0.02, 300) * 3600).toBeCloseTo(0.24, 12))
})

describe('formulas', () => {
  it.each([
    ['bead-section', 701.715, 0.0005],
    ['bead-flow', 6.3154, 0.00005],
    ['fill-pitch', 46.781, 0.0005],
    ['rise-rate', 0.18, 1e-9],
  ] as const)('%s answers in its shown unit', (name, expected, rounding) => {
    const formula = formulas.find(each => each.name === name)!
    const example = Object.fromEntries(formula.inputs.map(input => [input.name, input.example]))
    expect(Math.abs(formula.calculate(example) - expected)).toBeLessThanOrEqual(rounding)
  })
})
