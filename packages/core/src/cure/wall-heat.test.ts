import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dryInland, summerSite } from '../weather/fixtures/summer-site.js'
import { hoursFromNormals, wetBulb } from '../weather/index.js'
import {
  adiabaticRise,
  type CoverKind,
  coldestOf,
  covers,
  heatCapacity,
  hydrationOf,
  hydrationStore,
  momentOfTraceAge,
  peakOf,
  steepestOf,
  traceAgeAt,
  type WallHeatInput,
  type WallWeather,
  wallHeat,
  wallWeather,
} from './index.js'

const { mix, site } = summerSite
const kinds = Object.keys(covers) as CoverKind[]
const double = { kind: 'double', beadWidth: 0.05, thickness: 0.25 } as const
const hours = hoursFromNormals(dryInland, site, '2026-07-14', 9)
const westEast = wallWeather(site, hours, { leftBearing: 1.5 * Math.PI, height: 0.5 })
const morning = hours[0]!.start + 9 * 3600

/** The same air, sun and sky for days. */
function steady(
  values: Partial<Record<'air' | 'vapour' | 'film' | 'surroundings' | 'sunLeft' | 'sunRight', number>>,
): WallWeather {
  const column = (value: number) => new Float64Array(24 * 8).fill(value)
  return {
    first: 0,
    count: 24 * 8,
    air: column(values.air ?? 25),
    // hand: 25 °C at 50 %, 101,325 Pa: 0.5·3169.7 = 1584.9 Pa, 0.621945·1584.9/99740 = 0.009883.
    vapour: column(values.vapour ?? 0.00988266),
    film: column(values.film ?? 12),
    surroundings: column(values.surroundings ?? 290),
    sunLeft: column(values.sunLeft ?? 300),
    sunRight: column(values.sunRight ?? 50),
    pressure: column(101325),
  }
}
const run = (change: Partial<WallHeatInput> = {}) =>
  wallHeat({
    build: double,
    mix,
    weather: westEast,
    start: morning,
    mixTemperature: 28,
    covers: [],
    duration: 3 * 86400,
    ...change,
  })
const at = (heat: ReturnType<typeof wallHeat>, hour: number, key: 'left' | 'right' | 'most' | 'age') =>
  heat.trace[key][heat.trace.at.findIndex(moment => moment >= heat.start + hour * 3600)]!

describe('wallHeat', () => {
  it('keeps the temperature of every cell, in the depth where it lies', () => {
    const heat = run()
    // hand: two wythes of 50 mm in five cells of 10 mm, the second from 200 mm on
    expect(heat.depths.map(depth => Math.round(depth * 1000))).toEqual([
      5, 15, 25, 35, 45, 205, 215, 225, 235, 245,
    ])
    expect(heat.profile).toHaveLength(heat.trace.at.length)
    heat.profile.forEach((row, index) => {
      expect(Math.max(...row)).toBe(heat.trace.most[index])
      expect(Math.min(...row)).toBe(heat.trace.least[index])
    })
  })

  // independent: the same physics written apart as a method of lines, 120 cells, LSODA (scipy 1.17.1, rtol 1e-7), one wythe of 60 mm, mix of
  // 28 °C, steady air of 25 °C at 50 %, film 12 W/m²K, surroundings 290 K, sun 300 and 50 W/m². Ours has 6 cells and steps of 5 min: 0.15 K; its ages are those
  // of 10 mm blocks.
  const build = { kind: 'single', beadWidth: 0.06, thickness: 0.06 } as const
  it('follows an independent solution of a sealed wythe that sets in the sun', () => {
    const heat = run({
      build,
      weather: steady({}),
      start: 1800,
      covers: [{ from: 0, cover: 'curing-compound' }],
      duration: 48 * 3600,
    })
    expect(Math.abs(peakOf(heat).temperature - 33.511)).toBeLessThan(0.15)
    expect(Math.abs(at(heat, 12, 'most') - 29.91)).toBeLessThan(0.35)
    expect(Math.abs(at(heat, 48, 'left') - 27.671)).toBeLessThan(0.15)
    expect(Math.abs(at(heat, 48, 'right') - 26.189)).toBeLessThan(0.15)
    expect(Math.abs(at(heat, 48, 'age') / 3600 / 74.389 - 1)).toBeLessThan(0.005)
  })
  it('and of one under wet burlap', () => {
    const heat = run({
      build,
      weather: steady({}),
      start: 1800,
      covers: [{ from: 0, cover: 'wet-burlap' }],
      duration: 24 * 3600,
    })
    expect(Math.abs(at(heat, 24, 'left') - 21.515)).toBeLessThan(0.15)
    expect(Math.abs(at(heat, 24, 'right') - 19.734)).toBeLessThan(0.15)
    expect(Math.abs(at(heat, 24, 'age') / 3600 / 24.797 - 1)).toBeLessThan(0.005)
  })

  it.each(kinds)('accounts for 99.5 per cent of the heat in every step under %s', cover =>
    expect(run({ covers: [{ from: morning + 5400, cover }] }).balanceError).toBeLessThan(0.005),
  )
  it('accounts for it in any weather and wall', () =>
    fc.assert(
      fc.property(
        fc.record({
          air: fc.double({ min: -15, max: 45, noNaN: true }),
          film: fc.double({ min: 4, max: 50, noNaN: true }),
          surroundings: fc.double({ min: 240, max: 315, noNaN: true }),
          sunLeft: fc.double({ min: 0, max: 900, noNaN: true }),
        }),
        fc.constantFrom('single', 'double', 'solid'),
        fc.constantFrom(...kinds),
        fc.double({ min: 5, max: 38, noNaN: true }),
        (sky, kind, cover, mixTemperature) => {
          const heat = run({
            build: { kind, beadWidth: 0.05, thickness: 0.3 },
            weather: steady({ ...sky, vapour: 0.003 }),
            start: 1800,
            mixTemperature,
            covers: [{ from: 7200, cover }],
            duration: 86400,
          })
          expect(heat.balanceError).toBeLessThan(0.005)
        },
      ),
      { numRuns: 60 },
    ))

  it('does not depend on the step', () => {
    const peak = (step: number) =>
      peakOf(run({ step, covers: [{ from: morning, cover: 'white-sheet' }] })).temperature
    // Second order: the difference of 5 and 2.5 minutes bounds what is left.
    expect(Math.abs(peak(300) - peak(150))).toBeLessThan(0.05)
  })
  it('never warms more than its binder could without losing heat', () => {
    const dark = steady({ air: 20, surroundings: 293.15, sunLeft: 0, sunRight: 0 })
    const heat = run({
      build: { kind: 'solid', beadWidth: 0.05, thickness: 0.8 },
      weather: dark,
      start: 1800,
      mixTemperature: 20,
      covers: [{ from: 0, cover: 'insulated-blanket' }],
      duration: 5 * 86400,
    })
    const most = 20 + adiabaticRise(hydrationStore(mix), hydrationOf(mix).ultimate, heatCapacity(mix))
    expect(peakOf(heat).temperature).toBeLessThan(most)
    // A thick wrapped wall keeps more than half of it, a thin bare one far less.
    expect(peakOf(heat).temperature - 20).toBeGreaterThan(0.5 * (most - 20))
    const thin = run({
      weather: dark,
      start: 1800,
      mixTemperature: 20,
      covers: [{ from: 0, cover: 'curing-compound' }],
    })
    expect(peakOf(thin).temperature - 20).toBeLessThan(0.35 * (most - 20))
  })
  it('holds a wall under wet burlap near the wet bulb of shaded air', () => {
    const shade = steady({ air: 30, vapour: 0.01, surroundings: 303.15, sunLeft: 0, sunRight: 0 })
    const heat = run({
      weather: shade,
      start: 1800,
      covers: [{ from: 0, cover: 'wet-burlap' }],
      duration: 6 * 86400,
    })
    // independent: [ASHRAE2017] wet bulb of 30 °C air with 0.010 kg/kg (humidity 0.378) is 19.4 °C; long-wave from warm surroundings lifts a wet
    // face by hr/(hr + h + wet slope) ≈ 0.17 of the 10.6 K depression.
    const wet = wetBulb(30, 0.3778, 101325)
    const lifted = at(heat, 143, 'left') - wet
    expect(lifted).toBeGreaterThan(0)
    expect(lifted).toBeLessThan(2.5)
  })
  it('is hottest under clear plastic in the sun, coolest under wet burlap', () => {
    const peak = (cover: CoverKind) => peakOf(run({ covers: [{ from: morning + 3600, cover }] })).temperature
    expect(peak('clear-plastic')).toBeGreaterThan(peak('white-sheet') + 5)
    expect(peak('white-sheet')).toBeGreaterThan(peak('wet-burlap') + 5)
  })
  it('reaches about 60 °C under clear plastic by the sun alone, and more while it sets', () => {
    const under = (hydrationHeat: number) =>
      peakOf(
        run({ mix: { ...mix, hydrationHeat }, covers: [{ from: morning + 3600, cover: 'clear-plastic' }] }),
      ).temperature
    // common practice, no source: about 60 °C in strong sun; this place's mean July day has 0.9 of a clear one's.
    expect(Math.abs(under(0) - 60)).toBeLessThan(8)
    expect(under(mix.hydrationHeat)).toBeGreaterThan(under(0) + 5)
  })
  it('is warmed first on the side that the morning sun meets', () => {
    const heat = run({ start: hours[0]!.start + 6 * 3600, covers: [{ from: 0, cover: 'curing-compound' }] })
    expect(at(heat, 26.5, 'right')).toBeGreaterThan(at(heat, 26.5, 'left') + 3)
    expect(at(heat, 35.5, 'left')).toBeGreaterThan(at(heat, 35.5, 'right') + 3)
  })
  it('stops where the weather ends', () => {
    const heat = run({ duration: 30 * 86400 })
    expect(heat.until).toBe(hours[0]!.start + hours.length * 3600 - 1800)
    expect(heat.trace.at.at(-1)).toBeLessThanOrEqual(heat.until)
  })
  it('loses no water under a sheet and less each hour when bare', () => {
    const sealed = run({ covers: [{ from: 0, cover: 'white-sheet' }] })
    expect(sealed.trace.lostLeft.at(-1)).toBe(0)
    const { lostLeft } = run().trace
    expect(lostLeft[4]! - lostLeft[0]!).toBeGreaterThan(lostLeft[24]! - lostLeft[20]!)
  })
  it('dries its burlap out once where nobody wets it', () => {
    const heat = run({ covers: [{ from: morning, cover: 'wet-burlap' }], reserve: 0 })
    expect(heat.rewettings).toEqual([])
    // What it lost on a side is one store, and the last step's.
    expect(heat.trace.lostLeft.at(-1)!).toBeGreaterThanOrEqual(covers['wet-burlap'].store)
    expect(heat.trace.lostLeft.at(-1)!).toBeLessThan(covers['wet-burlap'].store + 0.15)
  })
})

describe('traces', () => {
  const heat = run({ covers: [{ from: morning, cover: 'white-sheet' }] })
  it('turn an age into a moment and back', () => {
    for (const hour of [1, 7.3, 20, 60]) {
      const age = traceAgeAt(heat, heat.start + hour * 3600)
      expect(momentOfTraceAge(heat, age)! - heat.start).toBeCloseTo(hour * 3600, 3)
    }
    expect(momentOfTraceAge(heat, 1e9)).toBeUndefined()
  })
  it('know their extremes', () => {
    expect(peakOf(heat).temperature).toBeGreaterThanOrEqual(Math.max(...heat.trace.most))
    expect(coldestOf(heat).temperature).toBeLessThanOrEqual(Math.min(...heat.trace.least))
    expect(steepestOf(heat).difference).toBeGreaterThan(0)
  })
})
