import { describe, expect, it } from 'vitest'
import { ageFactor } from '../mix/index.js'
import { dryInland, summerSite } from '../weather/fixtures/summer-site.js'
import { hoursFromNormals } from '../weather/index.js'
import { curePlan, cureTables, hydrated, hydrationOf, peakOf, wallHeat, wallWeather } from './index.js'

const { mix, site } = summerSite
const hydration = hydrationOf(mix)
const tables = cureTables(mix, hydration)
const sweep = (from: number, to: number, count: number) =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * (i + 0.37)) / count)

describe('the tables a wall reads', () => {
  it('give the age factor within 0.006 % of its exponential', () => {
    for (const temperature of sweep(-30, 95, 3001))
      expect(Math.abs(tables.ageFactor(temperature) / ageFactor(temperature, mix) - 1)).toBeLessThan(6e-5)
  })
  it('give the share hydrated within 2e-5 of its curve, and never less as the wall ages', () => {
    let before = 0
    for (const age of sweep(0, 30 * 86400, 20011)) {
      const share = tables.hydrated(age)
      expect(Math.abs(share - hydrated(hydration, age))).toBeLessThan(2e-5)
      expect(share).toBeGreaterThanOrEqual(before)
      before = share
    }
  })
  it('hand over to the curves themselves beyond their ends', () => {
    expect(tables.ageFactor(120)).toBe(ageFactor(120, mix))
    expect(tables.ageFactor(-40)).toBe(ageFactor(-40, mix))
    expect(tables.hydrated(50 * 86400)).toBe(hydrated(hydration, 50 * 86400))
  })
})

describe('a cure that is followed no longer and no finer than its questions ask', () => {
  const weather = wallWeather(site, hoursFromNormals(dryInland, site, '2026-07-14', 16), {
    leftBearing: 1.25 * Math.PI,
    height: 0.5,
  })
  const end = weather.first + 13 * 3600
  const input = {
    build: { kind: 'double', beadWidth: 0.05, thickness: 0.25 },
    mix,
    weather,
    start: end,
    mixTemperature: 29,
    covers: [{ from: end + 5400, cover: 'wet-burlap' }],
    duration: 8 * 86400,
  } as const
  it('agrees with steps of one minute: 0.1 K, 0.3 % of the age, 2 % of the water', () => {
    const [coarse, fine] = [wallHeat(input), wallHeat({ ...input, step: 60 })]
    expect(coarse.trace.at).toEqual(fine.trace.at)
    const apart = (key: 'left' | 'right' | 'most' | 'least', from = 0) =>
      Math.max(
        ...coarse.trace[key].slice(from).map((value, i) => Math.abs(value - fine.trace[key][i + from]!)),
      )
    // The first half hour is a mix of 29 °C meeting the air: 0.3 K while it jumps.
    for (const key of ['left', 'right', 'most', 'least'] as const) expect(apart(key, 2)).toBeLessThan(0.1)
    expect(Math.abs(coarse.trace.age.at(-1)! / fine.trace.age.at(-1)! - 1)).toBeLessThan(0.003)
    expect(Math.abs(peakOf(coarse).temperature - peakOf(fine).temperature)).toBeLessThan(0.1)
    expect(Math.abs(coarse.trace.lostLeft.at(-1)! / fine.trace.lostLeft.at(-1)! - 1)).toBeLessThan(0.02)
  })
  it('ends once the wall is as mature as asked, and no sooner than asked', () => {
    const age = 2 * 86400
    const early = wallHeat({ ...input, enough: { age, after: 3 * 86400 } })
    expect(early.until).toBe(end + 3 * 86400)
    const late = wallHeat({ ...input, enough: { age: 6 * 86400, after: 0 } })
    expect(late.trace.age.at(-1)!).toBeGreaterThanOrEqual(6 * 86400)
    expect(late.trace.age.at(-2)!).toBeLessThan(6 * 86400)
  })
  it('leaves no milestone unreached that a longer run would reach', () => {
    const plan = curePlan({
      job: summerSite,
      lift: { id: 'B3', start: end - 4 * 3600, end },
      build: input.build,
      weather,
      mixTemperature: 29,
      area: { left: 12, right: 10 },
    })
    expect(plan.milestones.every(mark => mark.at !== undefined && mark.at <= plan.heat.until)).toBe(true)
    expect(plan.heat.until - end).toBeLessThan(8 * 86400)
  })
})
