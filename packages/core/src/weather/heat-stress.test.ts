import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  crewHeat,
  globeTemperature,
  heatIndex,
  metabolicRates,
  naturalWetBulb,
  saturationPressure,
  screeningShare,
  wbgtFromAir,
  wbgtLimit,
  wbgtOutdoors,
  wbgtReference,
  wetBulb,
  windChill,
  workShare,
} from './index.js'

const fahrenheit = (c: number) => c * 1.8 + 32
const celsius = (f: number) => (f - 32) / 1.8
const sunny = (air: number, humidity: number, global: number, zenith: number, wind: number) => ({
  air,
  humidity,
  global,
  wind,
  pressure: 101325,
  beamShare: global > 0 ? 0.8 : 0,
  sinAltitude: global > 0 ? Math.cos((zenith * Math.PI) / 180) : -0.5,
})

/** Weather with a sun that fits its height. */
const anyAir = fc
  .record({
    air: fc.double({ min: -15, max: 48, noNaN: true }),
    humidity: fc.double({ min: 0.05, max: 1, noNaN: true }),
    wind: fc.double({ min: 0, max: 15, noNaN: true }),
    pressure: fc.double({ min: 70000, max: 106000, noNaN: true }),
    beamShare: fc.double({ min: 0, max: 0.9, noNaN: true }),
    sinAltitude: fc.double({ min: -0.9, max: 1, noNaN: true }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(({ share, ...air }) => ({ ...air, global: share * 1050 * Math.max(0, air.sinAltitude) }))

/** Where a falling function crosses zero. */
function halved(balance: (at: number) => number, from: number, until: number): number {
  let [low, high] = [from, until]
  for (let round = 0; round < 60; round += 1) {
    const middle = (low + high) / 2
    if (balance(middle) > 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}

describe('heatIndex', () => {
  // independent: the regression computed apart, two decimals.
  it.each([
    [90, 0.5, 94.6],
    [90, 0.7, 105.92],
    [86, 0.9, 105.39],
    [84, 0.9, 98.34],
    [100, 0.4, 109.26],
    [100, 0.5, 118.32],
    [110, 0.4, 135.66],
    [95, 0.1, 89.45],
    [80, 0.4, 79.79],
    [75, 0.5, 74.78],
  ])('at %d °F and %d is %d °F', (air, humidity, wanted) =>
    expect(fahrenheit(heatIndex(celsius(air), humidity))).toBeCloseTo(wanted, 1),
  )
  // published [NWS1990] chart, from memory; 1.3 °F is the regression's stated error.
  it.each([
    [90, 0.5, 95],
    [90, 0.7, 106],
    [100, 0.4, 109],
    [100, 0.5, 118],
    [110, 0.4, 136],
    [86, 0.9, 105],
  ])('at %d °F and %d lies within the chart’s error of %d °F', (air, humidity, printed) =>
    expect(Math.abs(fahrenheit(heatIndex(celsius(air), humidity)) - printed)).toBeLessThanOrEqual(1.3),
  )
})

describe('wbgtFromAir', () => {
  // independent: [BoM2010] computed apart, two decimals.
  it.each([
    [25, 0.5, 24.32],
    [30, 0.5, 29.26],
    [30, 0.7, 32.58],
    [35, 0.4, 32.59],
    [40, 0.3, 35.28],
  ])('at %d °C and %d is %d °C', (air, humidity, wanted) =>
    expect(wbgtFromAir(air, humidity)).toBeCloseTo(wanted, 2),
  )
})

describe('globeTemperature', () => {
  // independent: the published balance solved apart; 1.5 K covers the choice of air properties.
  it.each([
    ['noon, light wind', sunny(30, 0.5, 800, 30, 2), 43.4],
    ['night', sunny(30, 0.5, 0, 120, 2), 29.1],
    ['hot, nearly still', sunny(35, 0.4, 900, 20, 1), 53.4],
  ])('%s', (_, air, wanted) => expect(Math.abs(globeTemperature(air) - wanted)).toBeLessThan(1.5))
  it('agrees with the balance solved by halving, in any weather', () =>
    fc.assert(
      fc.property(anyAir, air => {
        // independent: the published balance written out again and bisected; 0.05 K is what three Newton steps may leave.
        const T = air.air + 273.15
        const e = (air.humidity * saturationPressure(air.air)) / 100
        const sky = 0.575 * e ** (1 / 7)
        const reynolds =
          (Math.max(air.wind, 0.13) * 0.0508) / ((1.33e-5 + 9e-8 * air.air) * (101325 / air.pressure))
        const h = ((0.0243 + 7.1e-5 * air.air) / 0.0508) * (2 + 0.6 * reynolds ** 0.5 * 0.71 ** (1 / 3))
        const slant = air.sinAltitude > 0.01 ? (1 / (2 * air.sinAltitude) - 1) * air.beamShare : 0
        const balance = (Tg: number) =>
          0.95 * 5.670374e-8 * (0.5 * (1 + sky) * T ** 4 - Tg ** 4) -
          h * (Tg - T) +
          0.5 * air.global * 0.95 * Math.max(0, 1 + slant + 0.45)
        expect(Math.abs(globeTemperature(air) + 273.15 - halved(balance, T - 30, T + 150))).toBeLessThan(0.05)
      }),
    ))
})

describe('naturalWetBulb', () => {
  it('agrees with its balance solved by halving, in any weather', () =>
    fc.assert(
      fc.property(anyAir, air => {
        // independent: as for the globe; the film by Pr^0.44 of 0.71.
        const T = air.air + 273.15
        const vapour = air.humidity * saturationPressure(air.air)
        const viscosity = (1.33e-5 + 9e-8 * air.air) * (101325 / air.pressure)
        const h =
          ((0.0243 + 7.1e-5 * air.air) / 0.007) *
          0.281 *
          ((Math.max(air.wind, 0.13) * 0.007) / viscosity) ** 0.6 *
          0.71 ** 0.44
        const schmidt = viscosity / (2.11e-5 * (T / 273.15) ** 1.94 * (101325 / air.pressure))
        const cooling = (2.45e6 / 1005) * 0.62198 * (0.71 / schmidt) ** 0.56
        const sky = 0.575 * (vapour / 100) ** (1 / 7)
        const sine = air.sinAltitude
        const slant = sine > 0.01 ? Math.min(20, Math.sqrt(1 - sine ** 2) / sine) / Math.PI : 0
        const ends = (0.25 * 0.007) / 0.0254
        const sun =
          sine > 0.01
            ? 0.6 * air.global * ((1 - air.beamShare) * (1 + ends) + air.beamShare * (slant + ends) + 0.45)
            : 0
        const balance = (wet: number) => {
          const saturated = saturationPressure(wet)
          const longwave = 0.95 * 5.670374e-8 * (0.5 * (1 + sky) * T ** 4 - (wet + 273.15) ** 4)
          return (
            air.air -
            wet -
            (cooling * (saturated - vapour)) / (air.pressure - saturated) +
            (longwave + sun) / h
          )
        }
        expect(Math.abs(naturalWetBulb(air) - halved(balance, -60, 80))).toBeLessThan(0.05)
      }),
    ))
  it('lies near the psychrometric wet bulb at night with wind', () =>
    // A wick in wind without sun is a psychrometer: within 0.7 K, the long-wave loss to the sky.
    expect(Math.abs(naturalWetBulb(sunny(30, 0.5, 0, 120, 4)) - wetBulb(30, 0.5, 101325))).toBeLessThan(0.7))
  it('rises by one to three kelvin in full sun and falls with wind', () => {
    const noon = naturalWetBulb(sunny(30, 0.5, 800, 30, 2))
    expect(noon - wetBulb(30, 0.5, 101325)).toBeGreaterThan(0.7)
    expect(noon - wetBulb(30, 0.5, 101325)).toBeLessThan(3.5)
    expect(naturalWetBulb(sunny(30, 0.5, 800, 30, 5))).toBeLessThan(noon)
  })
})

describe('wbgtOutdoors', () => {
  it('lies within 3 K of the simple formula where that one holds: sun and light wind', () => {
    // published [BoM2010]: assumes moderately high sun and light wind; two kelvin of it and one of ours.
    for (const [air, humidity] of [
      [25, 0.5],
      [30, 0.5],
      [30, 0.7],
      [35, 0.4],
    ] as const)
      expect(
        Math.abs(wbgtOutdoors(sunny(air, humidity, 700, 35, 1)) - wbgtFromAir(air, humidity)),
      ).toBeLessThan(3)
  })
  it('rises with sun and humidity', () => {
    expect(wbgtOutdoors(sunny(30, 0.5, 900, 30, 2))).toBeGreaterThan(wbgtOutdoors(sunny(30, 0.5, 300, 30, 2)))
    expect(wbgtOutdoors(sunny(30, 0.7, 600, 30, 2))).toBeGreaterThan(wbgtOutdoors(sunny(30, 0.4, 600, 30, 2)))
  })
})

describe('wbgtLimit', () => {
  // hand [NIOSH2016]: M, acclimatised, not yet; 0.01 is the print.
  it.each([
    [117, 32.92, 30.74],
    [180, 30.76, 28.1],
    [300, 28.21, 24.97],
    [349, 27.46, 24.05],
    [465, 26.02, 22.29],
    [520, 25.47, 21.6],
    [600, 24.75, 20.73],
  ])('at %d W is %d and %d °C', (rate, used, fresh) => {
    expect(Math.abs(wbgtLimit(rate, true) - used)).toBeLessThanOrEqual(0.01)
    expect(Math.abs(wbgtLimit(rate, false) - fresh)).toBeLessThanOrEqual(0.01)
  })
  // published [NIOSH2016] table 5-1, second-hand: whole degrees for the upper rate of each class.
  it.each([
    [234, 30],
    [349, 28],
    [465, 26],
    [580, 25],
  ])('at %d W rounds to the table’s %d °C within a degree', (rate, printed) =>
    expect(Math.abs(wbgtLimit(rate, true) - printed)).toBeLessThan(1),
  )
})

describe('wbgtReference', () => {
  it('agrees with the other agency’s curve at its own rates', () => {
    // published [ISO7243-2017] against published [NIOSH2016]: whole degrees, 1.5 K; 1.7 K for the heaviest work of people not used to heat.
    for (const load of ['light', 'moderate', 'heavy', 'very-heavy'] as const) {
      const [used, fresh] = wbgtReference[load]
      expect(Math.abs(used - wbgtLimit(metabolicRates[load], true))).toBeLessThan(1)
      expect(Math.abs(fresh - wbgtLimit(metabolicRates[load], false))).toBeLessThan(1.7)
    }
  })
})

describe('workShare', () => {
  it('gives the mean heat that just meets the limit', () => {
    for (const wbgt of [28.6, 30, 31.5]) {
      const share = workShare(wbgt, 'moderate', true)
      // closed form: the mixture's metabolic rate put back into the limit.
      expect(wbgtLimit(share * 300 + (1 - share) * 115, true)).toBeCloseTo(wbgt, 9)
    }
  })
  it('is all below the limit and nothing where rest itself is too hot', () => {
    expect(workShare(20, 'heavy', true)).toBe(1)
    expect(workShare(35, 'light', true)).toBe(0)
  })
})

describe('screeningShare', () => {
  // published [ACGIH2017] table, from memory: its own steps, at and just over the value.
  it.each([
    ['light', 31, 1],
    ['moderate', 28, 1],
    ['moderate', 28.1, 0.75],
    ['heavy', 27.5, 0.75],
    ['heavy', 29.1, 0.25],
    ['very-heavy', 28, 0.5],
    ['very-heavy', 30.1, 0],
  ] as const)('for %s work at %d °C is %d', (load, wbgt, share) =>
    expect(screeningShare(wbgt, load, true)).toBe(share),
  )
  it('lies within a third of an hour of the other agency’s curve', () => {
    // published [NIOSH2016] turned round; the table moves in quarters: one step and its rounding.
    for (const wbgt of [26, 28.5, 29.5, 30.5, 31.5])
      expect(
        Math.abs(screeningShare(wbgt, 'moderate', true) - workShare(wbgt, 'moderate', true)),
      ).toBeLessThan(0.34)
  })
})

describe('crewHeat', () => {
  it('warns with a source where it is too hot or too cold, and is silent in between', () => {
    expect(crewHeat({ wbgt: 20, air: 22, wind: 3 })).not.toHaveProperty('caution')
    expect(crewHeat({ wbgt: 30, air: 34, wind: 3 }).caution?.source).toBe('NIOSH2016')
    expect(crewHeat({ wbgt: -12, air: -20, wind: 8 }).caution?.source).toBe('Osczevski2005')
  })
  it('fills the hour with work and rest', () => {
    const hour = crewHeat({ wbgt: 30, air: 34, wind: 3 }, 'moderate')
    expect(hour.workMinutesPerHour + hour.restMinutesPerHour).toBe(60)
    // hand: M = 10^((56.7 − 30)/11.5) = 209.9; (209.9 − 115)/185 = 0.513 → 30 min in steps of five.
    expect(hour.workMinutesPerHour).toBe(30)
  })
})

describe('windChill', () => {
  // published chart, from memory, whole degrees: −10 °C and 30 km/h −20; −25 °C and 50 km/h −42; 0 °C and 20 km/h −5.
  it.each([
    [-10, 30, -20],
    [-25, 50, -42],
    [0, 20, -5],
  ])('at %d °C and %d km/h is the chart’s %d °C', (air, kmh, printed) =>
    expect(Math.abs(windChill(air, kmh / 3.6) - printed)).toBeLessThanOrEqual(0.5),
  )
  it('is the air itself in calm or mild weather', () => {
    expect(windChill(-10, 1)).toBe(-10)
    expect(windChill(15, 8)).toBe(15)
  })
})
