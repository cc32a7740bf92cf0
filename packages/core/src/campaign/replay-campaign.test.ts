import { describe, expect, it } from 'vitest'
import { addDays } from '../clock/index.js'
import { chanceInterval, empiricalQuantile, meanWithin } from './confidence.js'
import { inventedHours, inventedHouse, inventedInput, inventedWork, summer } from './invented-site.js'
import { countedDraws } from './random-draws.js'
import { replayCampaign, replayRuns, riskOf } from './replay-campaign.js'
import { scheduleCampaign } from './schedule-campaign.js'

const none = { breakdownsPerHour: 0, repairHours: 0, lateChance: 0, lateHours: 0 }
const draw = countedDraws(2026)
const everyDay = { workDays: [1, 2, 3, 4, 5, 6, 7] }

/** Years in which each day is stormy with chance q, else calm; and a section that needs `lifts` calm days. */
function stormyYears(count: number, days: number, q: number) {
  return Array.from({ length: count }, (_, year) => ({
    label: `year ${year}`,
    hours: inventedHours('2026-06-01', days, day => ({ air: 18, wind: draw(year, day, 9) < q ? 20 : 3 })),
  }))
}
const lifts = 8
const tower = inventedInput([inventedWork('A', 50 * lifts, 5)], 60)
const calmWeek = { ...tower, crew: { ...tower.crew, ...everyDay } }

describe('replaying weather years', () => {
  // Closed form: the day the k-th calm day comes is k + a negative binomial count of storms; P(up by day d) is the
  // chance of at least k calm days in d: a binomial tail. With 400 years the 95 % interval is ± 0.05 at most.
  it('finishes by a date as often as the binomial says', () => {
    const q = 0.3
    const risk = replayCampaign(calmWeek, stormyYears(400, 60, q), none, draw)
    for (const days of [10, 12, 14]) {
      const exact = binomialTail(days, 1 - q, lifts)
      const { chance, between } = risk.chanceBy(addDays('2026-06-01', days - 1))
      expect(Math.abs(chance - exact)).toBeLessThan(0.06)
      expect(between[0]).toBeLessThanOrEqual(chance)
      expect(between[1]).toBeGreaterThanOrEqual(chance)
    }
  })
  // Closed form: mean storms before the k-th calm day = k·q/(1 − q) = 8·0.3/0.7 = 3.43; its deviation over 400 years
  // √(k·q/(1 − q)²/400) = 0.11. Tolerance: three of those.
  it('loses as many days to wind as the negative binomial says', () => {
    const risk = replayCampaign(calmWeek, stormyYears(400, 60, 0.3), none, draw)
    expect(risk.lost[0]?.cause).toBe('wind')
    expect(Math.abs(risk.lost[0]!.days - 3.4286)).toBeLessThan(0.33)
    // The interval it gives itself: 1.96 of those deviations, of 400 drawn years within a tenth.
    expect(risk.lost[0]!.within).toBeCloseTo(1.96 * Math.sqrt((8 * 0.3) / 0.7 ** 2 / 400), 1)
  })
  // Closed form: a lift of 250 min survives with exp(−λ·250/60). The repair takes no time and whole layers count, so a day
  // prints 50 layers or fewer; without repair time no whole day is lost but to a stop in the first layer.
  it('loses a day to a stop in the first layer as often as it comes', () => {
    const rates = { ...none, breakdownsPerHour: 0.2, repairHours: 1e-9 }
    const risk = replayCampaign(calmWeek, stormyYears(60, 60, 0), rates, draw, { repeats: 5 })
    const perDay = 1 - Math.exp(-0.2 * (5 / 60))
    const lost = risk.lost.find(one => one.cause === 'breakdown')?.days ?? 0
    // About 13 printing days a replay; each lost with 1.65 %: 0.2 ± 0.03 over 300 replays (one deviation).
    const printed = lost / perDay
    expect(printed).toBeGreaterThan(8)
    expect(printed).toBeLessThan(20)
    expect(risk.quantiles[0]!.date! > '2026-06-08').toBe(true)
  })
  it('finishes no sooner than the bound of the campaign in the same weather', () => {
    const house = inventedHouse()
    const { bound } = scheduleCampaign(house)
    const risk = replayCampaign(house, [{ label: 'the same', hours: house.hours }], none, draw)
    expect(risk.finishes[0]! >= bound.date!).toBe(true)
  })
  it('comes out the same when run again', () => {
    const rates = { breakdownsPerHour: 0.05, repairHours: 20, lateChance: 0.1, lateHours: 2 }
    const years = Array.from({ length: 6 }, (_, y) => ({
      label: `${y}`,
      hours: inventedHours('2026-06-01', 120, (day, hour) => summer(day + 17 * y, hour)),
    }))
    const house = inventedHouse()
    const slow = replayCampaign(house, years, rates, draw)
    const again = replayCampaign(house, years, rates, draw)
    expect(again.finishes).toEqual(slow.finishes)
    expect(slow.finished).toBe(6)
  })
  const rough = { breakdownsPerHour: 0.05, repairHours: 20, lateChance: 0.1, lateHours: 2 }
  const summers = (count: number) =>
    Array.from({ length: count }, (_, y) => ({
      label: `${y}`,
      hours: inventedHours('2026-06-01', 120, (day, hour) => summer(day + 17 * y, hour)),
    }))
  it('come out the same when only the beginning of each year is met at first', () => {
    const house = inventedHouse()
    const whole = summers(6)
    const asked: string[] = []
    // Some years are up by the 18th, well within 23 days; others need the rest.
    const begun = whole.map(year => ({
      label: year.label,
      hours: year.hours.slice(0, 24 * 23),
      whole: () => {
        asked.push(year.label)
        return year
      },
    }))
    expect(replayRuns(house, begun, rough, draw)).toEqual(replayRuns(house, whole, rough, draw))
    expect(asked.length).toBeGreaterThan(0)
    expect(asked.length).toBeLessThan(6)
  })
  it('come out the same when run in shares', () => {
    const house = inventedHouse()
    const years = summers(5)
    const shares = [
      replayRuns(house, years.slice(0, 2), rough, draw),
      replayRuns(house, years.slice(2), rough, draw, { first: 2 }),
    ]
    expect(riskOf(shares.flat()).finishes).toEqual(replayCampaign(house, years, rough, draw).finishes)
  })
  it('says of replays that were not up in time that they have no date', () => {
    const risk = replayCampaign(calmWeek, stormyYears(5, 60, 1), none, draw)
    expect(risk.finished).toBe(0)
    expect(risk.quantiles.every(one => one.date === undefined)).toBe(true)
  })
})

describe('counted draws', () => {
  it('are spread evenly: chi-square over 20 bins of 20 000 draws', () => {
    const bins = new Array<number>(20).fill(0)
    for (let i = 0; i < 20_000; i++) bins[Math.floor(draw(i % 100, Math.floor(i / 100), 3) * 20)]!++
    const chi = bins.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0)
    // 19 degrees of freedom: 99.9 % lie below 43.8 (table of the chi-square distribution, from memory).
    expect(chi).toBeLessThan(43.8)
  })
  it('do not depend on each other from one day to the next', () => {
    const pairs = Array.from({ length: 5000 }, (_, i) => [draw(1, i, 0), draw(1, i + 1, 0)] as const)
    const covariance = pairs.reduce((sum, [a, b]) => sum + (a - 0.5) * (b - 0.5), 0) / pairs.length
    // Deviation of the mean product: (1/12)/√5000 = 0.0012; four of those.
    expect(Math.abs(covariance)).toBeLessThan(0.0047)
  })
})

describe('chanceInterval', () => {
  // Independent: scipy.stats.binomtest(k, n).proportion_ci(method='wilson'), scipy 1.17.1, run 2026-11-25.
  it.each([
    [0, 10, 0, 0.277533],
    [5, 10, 0.236593, 0.763407],
    [81, 263, 0.255289, 0.36621],
  ])('of %d in %d', (hits, count, low, high) => {
    const [from, to] = chanceInterval(hits, count)
    expect(from).toBeCloseTo(low, 5)
    expect(to).toBeCloseTo(high, 5)
  })
  it('of nothing in n ends at z²/(n + z²)', () => {
    // closed form: p = 0 leaves centre and half width z²/2n each, over 1 + z²/n; z from the table of the normal distribution.
    const z = 1.959964
    expect(chanceInterval(0, 25)[1]).toBeCloseTo(z ** 2 / (25 + z ** 2), 6)
    expect(chanceInterval(25, 25)[0]).toBeCloseTo(25 / (25 + z ** 2), 6)
  })
  it('narrows with more trials', () => {
    const width = (n: number) => chanceInterval(n / 2, n)[1] - chanceInterval(n / 2, n)[0]
    expect(width(400)).toBeLessThan(width(100) / 1.9)
  })
})

describe('meanWithin', () => {
  // Hand: 1, 2, 3, 4, 5 have mean 3 and s² = 2.5; 1.96·√(2.5/5) = 1.386.
  it('is the mean, and 1.96 deviations of it', () => {
    expect(meanWithin([1, 2, 3, 4, 5]).mean).toBe(3)
    expect(meanWithin([1, 2, 3, 4, 5]).within).toBeCloseTo(1.3859, 4)
  })
  it('knows nothing of a single value, and all of equal ones', () => {
    expect(meanWithin([4]).within).toBe(Number.POSITIVE_INFINITY)
    expect(meanWithin([4, 4, 4]).within).toBe(0)
  })
})

describe('empiricalQuantile', () => {
  it('is the smallest value that so many do not exceed', () => {
    expect([0.2, 0.5, 0.8, 1].map(share => empiricalQuantile([1, 2, 3, 4, 5], share))).toEqual([1, 3, 4, 5])
  })
})

function binomialTail(n: number, p: number, least: number): number {
  let term = (1 - p) ** n
  let below = 0
  for (let k = 0; k < least; k++) {
    below += term
    term *= ((n - k) / (k + 1)) * (p / (1 - p))
  }
  return 1 - below
}
