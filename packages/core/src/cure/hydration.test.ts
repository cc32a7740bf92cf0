import { describe, expect, it } from 'vitest'
import { summerSite } from '../weather/fixtures/summer-site.js'
import {
  adiabaticRise,
  hydrated,
  hydrationOf,
  hydrationPower,
  hydrationStore,
  ultimateHydration,
} from './index.js'

const { mix } = summerSite
const curve = { ultimate: 0.85, time: 13.69 * 3600, slope: 0.905 }

describe('ultimateHydration', () => {
  // published [Mills1966] by way of a state notebook, second-hand; four decimals.
  it.each([
    [0.3, 0.6261],
    [0.35, 0.6633],
    [0.4, 0.6943],
    [0.45, 0.7204],
    [0.5, 0.7428],
  ])('at a water-binder ratio of %d is %d', (ratio, wanted) =>
    expect(ultimateHydration(ratio)).toBeCloseTo(wanted, 4),
  )
  it('is half of 1.031 where water weighs 0.194 of the binder, and rises with the water', () => {
    // closed form: w/b = 0.194 halves the fraction.
    expect(ultimateHydration(0.194)).toBeCloseTo(1.031 / 2, 12)
    const shares = [0.25, 0.35, 0.45, 0.7].map(ultimateHydration)
    expect(shares).toEqual([...shares].sort((a, b) => a - b))
  })
  it('is at most the whole', () => expect(ultimateHydration(100)).toBe(1))
})

describe('hydrated', () => {
  // independent: the curve computed apart, four decimals.
  it.each([
    [6, 0.1031],
    [12, 0.2755],
    [24, 0.4657],
    [48, 0.6164],
    [72, 0.6804],
    [168, 0.7665],
  ])('after %d h is %d', (hours, wanted) => expect(hydrated(curve, hours * 3600)).toBeCloseTo(wanted, 4))
  it('is 1/e of the end at its time, nothing at the start', () => {
    expect(hydrated(curve, curve.time)).toBeCloseTo(0.85 / Math.E, 12)
    expect(hydrated(curve, 0)).toBe(0)
  })
})

describe('hydrationPower', () => {
  it('is the slope of the heat given off', () => {
    const shape = hydrationOf(mix)
    for (const age of [2, 8, 20, 60].map(hours => hours * 3600)) {
      // closed form against a central difference of `hydrated`; at the reference temperature the age factor is one.
      const slope = (hydrated(shape, age + 1) - hydrated(shape, age - 1)) / 2
      expect(hydrationPower(mix, shape, age, mix.reference) / (hydrationStore(mix) * slope)).toBeCloseTo(1, 6)
    }
  })
  it('is 1.7553 times as much at 30 °C as at 20 °C', () =>
    // independent: age factor computed apart.
    expect(
      hydrationPower(mix, hydrationOf(mix), 36000, 30) / hydrationPower(mix, hydrationOf(mix), 36000, 20),
    ).toBeCloseTo(1.7553, 4))
})

describe('adiabaticRise', () => {
  it('is 80.1 K for a rich mix', () =>
    // hand: 500 kg/m³ · 470 kJ/kg · 0.75 / (2200 · 1.0 kJ/kgK) = 80.11 K.
    expect(adiabaticRise(500 * 470e3, 0.75, 2200 * 1000)).toBeCloseTo(80.11, 2))
  it('gives back the heat it took, and is nothing before any is given off', () => {
    // closed form: ρ c ΔT = C Hu α.
    expect(2.1e6 * adiabaticRise(150e6, 0.6, 2.1e6)).toBeCloseTo(150e6 * 0.6, 3)
    expect(adiabaticRise(150e6, 0, 2.1e6)).toBe(0)
  })
})
