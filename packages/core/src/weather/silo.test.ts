import { describe, expect, it } from 'vitest'
import { dryInland, summerSite } from './fixtures/summer-site.js'
import {
  hoursFromNormals,
  printHours,
  shadeLeaves,
  siloGainOf,
  siloTemperatures,
  sinesOfSun,
  siteSilo,
  solAir,
} from './index.js'

const { site } = summerSite
const hours = hoursFromNormals(dryInland, site, '2026-07-01', 31)
const sines = sinesOfSun(site, hours)
const dark = { ...siteSilo, absorptance: 0, emissivity: 0 }
const mean = (values: ArrayLike<number>) => Array.from(values).reduce((a, b) => a + b, 0) / values.length
const swing = (values: Float64Array) => Math.max(...values) - Math.min(...values)
/** A day at 60 °C, then steady at 30 °C, in a wind that makes the film 2.8 + 3·4 at the silo's middle. */
const cooling = hours.map((hour, index) => ({
  ...hour,
  air: index < 24 ? 60 : 30,
  wind: 4 / (2.5 / 10) ** (1 / 7),
}))

describe('siloTemperatures', () => {
  it('cools from its first day by one exponential', () => {
    const run = siloTemperatures(cooling, sines, dark)
    // hand: side 37.699 m², ends 4.524 m² each; Ui 8·0.27/2.4 = 0.9 and 6·0.27/5 = 0.324; film 14.8;
    // U 0.84841 and 0.31706 W/m²K, ΣAU = 34.853 W/K; C = 22.619·1515·921.14 + 46.747·19600 = 32.482e6 J/K; 10.8 days.
    const rate = 34.853 / 32.482e6
    for (const after of [1, 100, 700])
      expect(run[23 + after]).toBeCloseTo(30 + 30 * Math.exp(-rate * 3600 * after), 2)
  })
  // independent: 60 rings of a tall cylinder, explicit steps of 300 s, the same film, air and steel.
  const tall = { ...dark, height: 1e7 }
  const apart = (air: (index: number) => number, from: number) => {
    const weather = hours.map((hour, index) => ({ ...hour, air: air(index), wind: 0 }))
    const run = siloTemperatures(weather, sines, tall)
    const rings = ringMeans(
      weather.map(hour => hour.air),
      mean(weather.slice(0, 24).map(hour => hour.air)),
    )
    return Math.max(...run.subarray(from).map((value, index) => Math.abs(value - rings[from + index]!)))
  }
  it('lags a drift as conduction through the round does, to a day', () =>
    // 0.24 K a day for a month: a difference under 0.24 K is a lag that differs by less than a day.
    expect(apart(index => 20 + index / 100, 0)).toBeLessThan(0.24))
  it('misses of a day’s swing no more than the outer rings take of it', () =>
    // closed form: skin admittance √(kρcω) = 5.23 W/m²K at 45° behind a film of 2.8 lets 1.96 W/m²K through; ±8 K of air move the mean by
    // 8·1.96·1.667/(1.428e6·7.27e-5) = ±0.25 K, which one body cannot exceed in error.
    expect(apart(index => 25 + 8 * Math.sin((index * Math.PI) / 12), 240)).toBeLessThan(0.25))
  it('is slower than conduction after a jump, by less than a sixth of it', () =>
    expect(apart(index => (index < 24 ? 60 : 30), 0) / 30).toBeLessThan(1 / 6))
  it('has the mean of the air without sun and sky, however long it takes', () => {
    const steady = hours.map((hour, index) => ({
      ...hour,
      air: 25 + 8 * Math.sin((index * Math.PI) / 12),
      wind: 2,
    }))
    expect(siloGainOf(steady, sines, dark)).toBeCloseTo(0, 9)
    expect(mean(siloTemperatures(steady, sines, dark))).toBeCloseTo(25, 1)
    // Endless time: it stays where the first day put it.
    const endless = siloTemperatures(steady, sines, { ...dark, density: 1e12 })
    expect(swing(endless)).toBeLessThan(1e-6)
    expect(endless[700]).toBeCloseTo(25, 6)
  })
  it('gains on the sun and loses to the sky what the balance of one hour says', () => {
    const noon = { ...hours[12]!, air: 30, humidity: 0.3, wind: 0, global: 900, beam: 800, diffuse: 150 }
    // hand: tall silo, sun at 60°: 0.5·(800·0.5/π + 75 + 90) = 146.16 W/m² over a film of 2.8, no long-wave: 52.20 K.
    const tall = { ...dark, absorptance: 0.5, height: 1e7 }
    const sine = Float64Array.of(Math.sqrt(3) / 2)
    expect(siloGainOf([noon], sine, tall)).toBeCloseTo(52.2, 1)
    const night = { ...noon, global: 0, beam: 0, diffuse: 0 }
    const gain = siloGainOf([night], Float64Array.of(-0.5), { ...tall, emissivity: 0.9 })
    // Monotonic: a night sky cools it, but not below half of what a clear sky lies under the air.
    expect(gain).toBeLessThan(-1)
    expect(gain).toBeGreaterThan(-10)
  })
  it('in July is some kelvins over the air, less in white, in wind and in the shade', () => {
    const gain = siloGainOf(hours, sines)
    expect(gain).toBeGreaterThan(1)
    expect(gain).toBeLessThan(8)
    expect(siloGainOf(hours, sines, { ...siteSilo, absorptance: 0.3 })).toBeLessThan(gain)
    const windy = hours.map(hour => ({ ...hour, wind: 3 * hour.wind }))
    expect(siloGainOf(windy, sines)).toBeLessThan(gain)
    const left = shadeLeaves(hours, sines)!
    expect(left).toBeGreaterThan(0.2)
    expect(left).toBeLessThan(0.7)
  })
  it('leaves all of a dull sky’s heat in the shade, and has nothing to leave at night', () => {
    const dull = hours.map(hour => ({ ...hour, beam: 0, global: 200, diffuse: 200 }))
    expect(shadeLeaves(dull, sines)).toBeCloseTo(1, 9)
    const night = hours.map(hour => ({ ...hour, beam: 0, global: 0, diffuse: 0 }))
    expect(shadeLeaves(night, sines)).toBeUndefined()
  })
})

describe('the dry material of a job', () => {
  const { siloGain: _, ...batching } = summerSite.batching
  const mixes = (change: object) =>
    printHours({ ...summerSite, batching: { ...batching, ...change } }, hours).map(
      hour => hour.mixTemperature,
    )
  it('comes from the silo in the sun, cooler in the shade', () => {
    const [sun, shade] = [mixes({}), mixes({ siloShade: true })]
    expect(sun).not.toEqual(mixes({ siloGain: 5 }))
    // All but the first hours differ: the silo starts where its first day would hold it.
    expect(sun.every((mix, index) => mix > shade[index]!)).toBe(true)
  })
  it('has the gain that the job names, shade or not', () =>
    expect(mixes({ siloGain: 5, siloShade: true })).toEqual(mixes({ siloGain: 5 })))
})

describe('solAir', () => {
  // hand [ASHRAE2017]: to + a I/17, two decimals.
  it.each([
    [35, 0.6, 800, 63.24],
    [30, 0.9, 900, 77.65],
    [30, 0.45, 700, 48.53],
  ])('at %d °C, keeping %d of %d W/m², is %d °C', (air, absorbed, sun, wanted) =>
    expect(solAir(air, absorbed, sun, 17)).toBeCloseTo(wanted, 2),
  )
  it('is 3.7 K lower on a roof under a clear sky', () =>
    expect(solAir(30, 0, 0, 17, 63)).toBeCloseTo(30 - 3.70588, 4))
})

/** Mean of the rings of a cylinder of 2.4 m hour by hour, its skin in air by a film of 2.8 W/m²K with steel on it. */
function ringMeans(air: readonly number[], start: number): Float64Array {
  const [rings, radius, k, heat] = [60, 1.2, 0.27, 1515 * 0.22 * 4187]
  const width = radius / rings
  const T = new Float64Array(rings).fill(start)
  return Float64Array.from(air, outside => {
    for (let step = 0; step < 12; step += 1) {
      let inner = 0
      for (let i = 0; i < rings; i += 1) {
        const rim = (i + 1) * width
        const outer =
          i < rings - 1
            ? (2 * Math.PI * rim * k * (T[i]! - T[i + 1]!)) / width
            : (2 * Math.PI * rim * (T[i]! - outside)) / (1 / 2.8 + width / 2 / k)
        const area = Math.PI * (rim ** 2 - (rim - width) ** 2)
        const steel = i === rings - 1 ? 2 * Math.PI * rim * 19600 : 0
        T[i] = T[i]! + (300 * (inner - outer)) / (area * heat + steel)
        inner = outer
      }
    }
    let sum = 0
    for (let i = 0; i < rings; i += 1) sum += T[i]! * (2 * i + 1)
    return sum / rings ** 2
  })
}
