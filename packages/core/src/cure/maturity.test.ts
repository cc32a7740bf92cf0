import { describe, expect, it } from 'vitest'
import { ageFactor, strengthAt } from '../mix/index.js'
import {
  ageFactorDanish,
  ageFactorEurocode,
  nurseSaul,
  strengthShareAci,
  strengthShareEurocode,
} from './index.js'

const day = 86400

describe('age factors', () => {
  // independent: the printed formulas computed apart; 1e-3 is the print. T: C1074 with 20 °C, with 23 °C, Danish, Eurocode.
  const rows: readonly (readonly [number, number, number, number, number | undefined])[] = [
    [0, 0.2868, 0.2413, 0.1511, 0.3671],
    [5, 0.3986, 0.3354, 0.2925, 0.4778],
    [10, 0.5475, 0.4606, 0.4974, 0.6161],
    [15, 0.7438, 0.6258, 0.7476, undefined],
    [20, 1, 0.8413, 1, 0.9981],
    [23, 1.1886, 1, 1.1494, undefined],
    [30, 1.7553, 1.4768, 1.5737, 1.5662],
    [40, 2.9723, 2.5006, 2.4057, 2.388],
    [50, 4.8716, 4.0986, 3.5824, undefined],
  ]
  it.each(rows)('at %d °C', (temperature, twenty, twentyThree, danish, eurocode) => {
    const near = (found: number, wanted: number) => expect(Math.abs(found - wanted)).toBeLessThan(1e-3)
    near(ageFactor(temperature, { activation: 5000, reference: 20 }), twenty)
    near(ageFactor(temperature, { activation: 5000, reference: 23 }), twentyThree)
    near(ageFactorDanish(temperature), danish)
    if (eurocode !== undefined) near(ageFactorEurocode(temperature), eurocode)
  })
  // published [FreieslebenHansen1977] table as commonly printed, from memory, two decimals.
  it.each([
    [10, 0.5],
    [15, 0.75],
    [30, 1.57],
  ])('of the Danish table at %d °C is %d', (temperature, printed) =>
    expect(Math.abs(ageFactorDanish(temperature) - printed)).toBeLessThanOrEqual(0.005),
  )
  it('of the European code quicken by 4000/(273 + T)² a kelvin', () => {
    // closed form: the slope of the exponent; central difference over 0.02 K.
    const slope = Math.log(ageFactorEurocode(25.01) / ageFactorEurocode(24.99)) / 0.02
    expect(slope).toBeCloseTo(4000 / 298 ** 2, 8)
  })
  it('have no jump at 20 °C', () =>
    expect(ageFactorDanish(19.999999)).toBeCloseTo(ageFactorDanish(20.000001), 5))
})

describe('nurseSaul', () => {
  it('sums degrees over the datum and gives nothing for frost', () => {
    const spells = [
      { temperature: 20, duration: 10 * 3600 },
      { temperature: -5, duration: 10 * 3600 },
      { temperature: 5, duration: 2 * 3600 },
    ]
    // hand: 20·10 + 0 + 5·2 = 210 °C·h; with the datum at −10: 300 + 50 + 30 = 380.
    expect(nurseSaul(spells, 0) / 3600).toBeCloseTo(210, 9)
    expect(nurseSaul(spells, -10) / 3600).toBeCloseTo(380, 9)
  })
})

describe('strength against age', () => {
  // hand: hyperbola with 40 MPa, 0.5/d, 0.3 d; 1e-3 MPa is the print.
  const growth = { ultimate: 40e6, rateConstant: 0.5 / day, start: 0.3 * day }
  it.each([
    [1, 10.37],
    [3, 22.979],
    [7, 30.805],
    [28, 37.306],
  ])('of the hyperbola at %d d is %d MPa', (age, wanted) =>
    expect(strengthAt(growth, age * day) / 1e6).toBeCloseTo(wanted, 3),
  )
  it('of the hyperbola is half at one time constant after its start', () =>
    expect(strengthAt(growth, 2.3 * day)).toBeCloseTo(20e6, 3))
  // hand [ACI209-1992]: t/(4 + 0.85 t); 1e-4 is the print.
  it.each([
    [1, 0.2062],
    [3, 0.458],
    [7, 0.7035],
    [14, 0.8805],
    [28, 1.0072],
  ])('by the American curve at %d d is %d', (age, wanted) =>
    expect(strengthShareAci(age * day)).toBeCloseTo(wanted, 4),
  )
  it('by the American curve starts at a quarter a day and tends to 1/0.85', () => {
    // closed form: slope 1/4 at the start, limit 1/0.85 = 1.1765; the remainder at 1e6 days is 4/(0.85²·10⁶) = 5.5e-6.
    expect(strengthShareAci(1e-6 * day) / 1e-6).toBeCloseTo(0.25, 6)
    expect(strengthShareAci(1e6 * day)).toBeCloseTo(1 / 0.85, 4)
  })
  // hand [EN1992-1] (3.2).
  it.each([
    [3, 0.663, 0.5982, 0.458],
    [7, 0.8187, 0.7788, 0.6839],
    [90, 1.0925, 1.1169, 1.183],
  ])('by the European curve at %d d', (age, rapid, normal, slow) => {
    expect(strengthShareEurocode(age * day, 0.2)).toBeCloseTo(rapid, 4)
    expect(strengthShareEurocode(age * day, 0.25)).toBeCloseTo(normal, 4)
    expect(strengthShareEurocode(age * day, 0.38)).toBeCloseTo(slow, 4)
  })
  it('by the European curve tends to eˢ, and rises all the way', () => {
    // closed form: √(28/t) → 0; at 1e8 days it is 0.0005.
    expect(strengthShareEurocode(1e8 * day, 0.25)).toBeCloseTo(Math.exp(0.25), 3)
    const shares = [3, 7, 14, 28, 90].map(days => strengthShareEurocode(days * day, 0.38))
    expect(shares).toEqual([...shares].sort((a, b) => a - b))
  })
  it('by the European curve is whole at 28 days', () => expect(strengthShareEurocode(28 * day, 0.25)).toBe(1))
})
