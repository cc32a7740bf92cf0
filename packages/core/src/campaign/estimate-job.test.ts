import { describe, expect, it } from 'vitest'
import { type BidInput, estimateJob } from './estimate-job.js'
import { formulas } from './formulas.js'
import { inventedInput, inventedWork } from './invented-site.js'
import { scheduleCampaign } from './schedule-campaign.js'

const same = (value: number) => ({ low: value, likely: value, high: value })
const bid: BidInput = {
  floorArea: 100,
  wallLength: 50,
  wallHeight: 2.8,
  layerHeight: 0.02,
  beadWidth: 0.05,
  beadPerMetre: 3,
  speed: 0.1,
  liftHeight: 1,
  setUpAndWashOut: 3600,
  changeOver: 1800,
  longestShift: 36000,
  openHours: same(12),
  lostShare: same(0.2),
  layerTimeMost: 600,
}

describe('estimateJob', () => {
  const estimate = estimateJob(bid)
  // Hand, likely: 50 m · 3 = 150 m a layer, 140 layers, 15 % openings: 17 850 m. Area (0.05 − 0.02)·0.02 + π/4·0.0004 =
  // 0.00091416 m²: 16.318 m³. Layer 1500 s · 1.4 = 2100 s: 4 sections, 3 lifts each. Print 178 500 s · 1.4 = 69.42 h.
  // Day min(12, 9)·0.75 = 6.75 h: 11 days bare, 12 lifts: one change more: 69.92/6.75 → 11. Lost 20 %: 14.
  it('is what the hand calculates', () => {
    expect(estimate.beadLength.likely).toBeCloseTo(17850, 6)
    expect(estimate.volume.likely).toBeCloseTo(16.318, 3)
    expect([estimate.sections.likely, estimate.lifts.likely]).toEqual([4, 12])
    expect(estimate.printHours.likely).toBeCloseTo(69.4167, 3)
    expect([estimate.printDays.likely, estimate.workDays.likely]).toEqual([11, 14])
  })
  it('spreads from the best case to the worst', () => {
    for (const one of [estimate.beadLength, estimate.printHours, estimate.printDays, estimate.workDays]) {
      expect(one.low).toBeLessThan(one.likely)
      expect(one.likely).toBeLessThan(one.high)
    }
  })
  it('takes wall from floor when there is no plan, and says so', () => {
    const { wallLength: _, ...noPlan } = bid
    const rough = estimateJob(noPlan)
    expect(rough.wallLength).toEqual({ low: 35, likely: 45, high: 60 })
    expect(rough.assumes).toHaveLength(4)
  })
  // The campaign of a like job, planned for real in mild weather: four sections of 140 layers of 525·0.85 s.
  it('holds the campaign that is then planned for real', () => {
    const work = ['A', 'B', 'C', 'D'].map(name => inventedWork(name, 140, (525 * 0.85) / 60))
    const { days } = scheduleCampaign(inventedInput(work, 40), 'brisk')
    expect(days.length).toBeGreaterThanOrEqual(estimate.printDays.low)
    expect(days.length).toBeLessThanOrEqual(estimate.printDays.high)
  })
})

describe('formulas of the campaign', () => {
  it('answer in the units they show', () => {
    const named = (name: string) => formulas.find(one => one.name === name)!
    const example = (name: string) =>
      Object.fromEntries(named(name).inputs.map(input => [input.name, input.example]))
    expect(named('lift-layers').calculate(example('lift-layers'))).toBe(50)
    expect(named('finish-chance-low').calculate(example('finish-chance-low'))).toBeCloseTo(25.5289, 3)
    expect(named('finish-chance-high').calculate(example('finish-chance-high'))).toBeCloseTo(36.621, 3)
  })
})
