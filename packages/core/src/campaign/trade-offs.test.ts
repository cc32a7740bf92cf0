import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Campaign } from './campaign.js'
import { checkCampaign } from './check-campaign.js'
import { generatedJob } from './fixtures/generated-jobs.js'
import { growing, inventedCrew, inventedHours, inventedInput, inventedWork, summer } from './invented-site.js'
import { scheduleCampaign } from './schedule-campaign.js'
import { tradeOffs } from './trade-offs.js'

const prices = { machinePerDay: 1600, crewPerHour: 120 }
const work = ['A', 'B', 'C', 'D', 'E', 'F'].map((name, i) => inventedWork(name, 180, 3 + 0.7 * i))
const input = inventedInput(work, 90, {
  hours: inventedHours('2026-06-01', 90, summer),
  physics: growing(450, 9000, 1.6),
  prices,
})
const costOf = ({ days }: Campaign): number =>
  days.length * prices.machinePerDay +
  days.reduce((sum, day) => sum + ((day.end - day.start) / 3600) * prices.crewPerHour, 0)
const lifts = ({ days }: Campaign) => days.reduce((sum, day) => sum + day.lifts.length, 0)
const date = ({ days }: Campaign) => days.at(-1)!.date
const all = tradeOffs(input, costOf)

describe('trade-offs', () => {
  it('are campaigns really planned, each keeping every rule', () => {
    expect(all.length).toBeGreaterThan(1)
    for (const { campaign } of all) {
      expect(campaign.finished).toBe(true)
      expect(checkCampaign(input, campaign)).toEqual([])
    }
  })
  it('are the same to whoever hears how far the search is, and it only gets further', () => {
    const shares: number[] = []
    expect(tradeOffs(input, costOf, share => shares.push(share))).toEqual(all)
    expect(shares[0]).toBe(0)
    expect(new Set(shares).size).toBe(shares.length)
    expect([...shares].sort((a, b) => a - b)).toEqual(shares)
    expect(shares.at(-1)).toBeLessThan(1)
  })
  it('tell cost, lifts and date of their own campaign', () => {
    for (const one of all) {
      expect([one.cost, one.lifts, one.date]).toEqual([
        costOf(one.campaign),
        lifts(one.campaign),
        date(one.campaign),
      ])
    }
  })
  it('of which some other one is nowhere worse are not worthwhile, and only those', () => {
    const better = (a: (typeof all)[number], b: (typeof all)[number]) =>
      a.date <= b.date && a.cost <= b.cost && a.lifts <= b.lifts && a.safety >= b.safety
    for (const one of all)
      expect(one.isWorthwhile).toBe(!all.some(other => other !== one && better(other, one)))
    expect(all.filter(one => one.isWorthwhile).length).toBeGreaterThan(0)
  })
})

describe('the cheapest ways of a job', () => {
  const every = { ...prices, washedOutPerDay: 90 }
  const costOfAll = (campaign: Campaign) => costOf(campaign) + every.washedOutPerDay * campaign.days.length
  it('never cost more than the soonest, less the longer they may take, and at last no more than a calm one', () => {
    fc.assert(
      fc.property(fc.constantFrom(3, 5, 33, 34, 42, 44, 54), seed => {
        const job = { ...generatedJob(seed), prices: every }
        const rows = tradeOffs(job, costOfAll)
        for (const { campaign } of rows) expect(checkCampaign(job, campaign)).toEqual([])
        const soonest = rows.find(row => row.aim === 'soonest')!
        const cheapest = rows.filter(row => row.aim === 'cheapest')
        const falling = [soonest, ...cheapest].map(row => row.cost)
        expect(falling).toEqual([...falling].sort((a, b) => b - a))
        const least = Math.min(...rows.map(row => row.cost))
        expect(Math.min(...falling)).toBeCloseTo(least, 6)
      }),
      { numRuns: 3 },
    )
  })
  // By hand: open until half past seven and all day by turns. One section of 150 layers of 3 min, 50 a lift: 150 min on a
  // long day, 40 layers on a short one. Soonest: 40 + 50 + 40 + 20 in four days. Cheapest: three long ones, 50 each.
  it('leave out days that bring too little', () => {
    const turns = inventedInput([inventedWork('A', 150, 3)], 14, {
      hours: inventedHours('2026-06-01', 14, (day, hour) => ({
        air: 18,
        rain: day % 2 === 0 && (hour < 5 || hour > 6) ? 20 : 0,
      })),
      crew: { ...inventedCrew, workDays: [1, 2, 3, 4, 5, 6, 7], setUp: 1800 },
      prices: every,
    })
    const heights = ({ days }: Campaign) => days.map(day => [day.date.slice(8), day.lifts[0]!.lastLayer])
    expect(heights(scheduleCampaign(turns)).length).toBe(4)
    expect(heights(scheduleCampaign({ ...turns, aim: 'cheapest' }))).toEqual([
      ['02', 50],
      ['04', 100],
      ['06', 150],
    ])
  })
})

describe('the aim of a job', () => {
  const soonest = scheduleCampaign(input)
  it('cheapest never costs more than soonest', () => {
    const cheapest = scheduleCampaign({ ...input, aim: 'cheapest' })
    expect(checkCampaign(input, cheapest)).toEqual([])
    expect(costOf(cheapest)).toBeLessThanOrEqual(costOf(soonest))
  })
  it('calmest never takes more lifts than soonest', () => {
    const calmest = scheduleCampaign({ ...input, aim: 'calmest' })
    expect(checkCampaign(input, calmest)).toEqual([])
    expect(lifts(calmest)).toBeLessThanOrEqual(lifts(soonest))
  })
  it('soonest is never up later than the others', () => {
    for (const one of all) expect(one.date >= date(soonest)).toBe(true)
  })
})
