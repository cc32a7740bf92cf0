import { describe, expect, it } from 'vitest'
import { campaignFindings } from './campaign-findings.js'
import type { CampaignInput } from './campaign-input.js'
import { checkCampaign } from './check-campaign.js'
import { checkCampaignInput } from './check-input.js'
import {
  growing,
  inventedCrew,
  inventedHours,
  inventedInput,
  inventedRules,
  inventedWork,
} from './invented-site.js'
import { scheduleCampaign } from './schedule-campaign.js'

const a = inventedWork('A', 60, 5)
const found = (input: CampaignInput) => {
  const campaign = scheduleCampaign(input)
  expect(checkCampaign(input, campaign)).toEqual([])
  return { campaign, findings: campaignFindings(input, campaign) }
}

describe('a job that cannot be finished still gets a plan of the rest', () => {
  it('names the limit that keeps every day closed and how little would open one', () => {
    const windy = inventedHours('2026-06-01', 5, (day, hour) => ({
      air: 18,
      wind: 12 + day + (hour === 8 ? 0 : 0.5),
    }))
    const { campaign, findings } = found(inventedInput([a], 5, { hours: windy }))
    expect(campaign.finished).toBe(false)
    // Monday is calmest: 12.5 m/s over two hours, 10 allowed.
    expect(findings[0]).toMatchObject({ check: 'campaign/no-feasible-day', demand: 12.5, capacity: 10 })
    expect(findings[0]?.say).toContain('2026-06-01')
  })
  it('says when one layer is taller than a lift may be, and prints the other section', () => {
    const thick = { ...inventedWork('B', 10, 5), layerHeight: 2 }
    const { campaign, findings } = found(inventedInput([a, thick], 10))
    expect(findings.map(finding => [finding.check, finding.at])).toEqual([['campaign/never-fits', 'B']])
    expect(campaign.days.flatMap(day => day.lifts).at(-1)).toMatchObject({ section: 'A', lastLayer: 60 })
  })
  it('says when the first layer does not stand', () => {
    const { findings } = found(inventedInput([a], 5, { physics: growing(450, 100, 0) }))
    expect(findings[0]?.check).toBe('campaign/does-not-stand')
  })
  it('says when the weather ends too soon, and about how much is missing', () => {
    const { findings } = found(inventedInput([inventedWork('A', 400, 5)], 3))
    expect(findings[0]).toMatchObject({ check: 'campaign/weather-ends', demand: 400, capacity: 150 })
  })
  it('says what blocks together when no hour is ever open, not to give more weather', () => {
    // Hot and windy in every hour; on the second day the least so: mix 34 of 32 °C, wind 11 of 10 m/s.
    const sky = (day: number) => (day === 1 ? { air: 28, wind: 11 } : { air: 33, wind: 16 })
    const { findings } = found(inventedInput([a], 4, { hours: inventedHours('2026-06-01', 4, sky) }))
    expect(findings[0]?.check).toBe('campaign/no-feasible-day')
    expect(findings[0]?.say).toMatch(/The least change, together: .*wind.* and .*mix.* on 2026-06-02/i)
    expect(findings[0]?.say).not.toContain('Give more weather')
  })
  it("says when the crew's day is too short for one layer", () => {
    const crew = { ...inventedCrew, dayStart: 8 * 3600, dayEnd: 9.05 * 3600 }
    const { findings } = found(inventedInput([a], 4, { crew }))
    expect(findings[0]?.check).toBe('campaign/no-feasible-day')
    expect(findings[0]?.say).toContain('Lengthen the day or the shift')
  })
  it('says when layers take longer than they may lie bare', () => {
    const slow = inventedInput([inventedWork('A', 4, 40)], 10)
    const { campaign, findings } = found(slow)
    expect(campaign.days).toHaveLength(4)
    expect(findings.map(finding => finding.check)).toEqual(['campaign/crawls'])
  })
  it('says when the walls are up after the date they are wanted', () => {
    const { findings } = found(inventedInput([a], 10, { due: '2026-06-01' }))
    expect(findings[0]).toMatchObject({ check: 'campaign/late', verdict: 'warn', demand: 1 })
  })
})

describe('lintels a few layers apart', () => {
  // Hand: 90 layers, 50 by rule, ends after 44 and 46: lifts 44, 2, 44 make three days; both ends at 46: two days.
  const end = (afterLayer: number, ref: string) => ({ afterLayer, reason: 'lintel' as const, ref })
  const uneven = { ...inventedWork('A', 90, 5), liftEnds: [end(44, 'D1'), end(46, 'F1')] }
  it('are said to cost the day they cost', () => {
    const { findings } = found(inventedInput([uneven], 10))
    expect(findings).toMatchObject([
      { check: 'campaign/close-lift-ends', demand: 3, capacity: 2, verdict: 'warn' },
    ])
    expect(findings[0]?.say).toContain('after layer 44 (D1), after layer 46 (F1)')
  })
  it('are not mentioned where they cost nothing', () => {
    const apart = { ...uneven, liftEnds: [end(20, 'D1'), end(46, 'F1')] }
    expect(found(inventedInput([apart], 10)).findings).toEqual([])
  })
})

describe('bad input', () => {
  it('is told all at once', () => {
    const hold = { afterLayer: 30, duration: 900, reason: 'lintel' as const, ref: 'D1' }
    const work = { ...a, holds: [hold, { ...hold, afterLayer: 99, reason: 'embed' as const }] }
    const input = inventedInput([work, { ...a, printTimes: [300, -1] }], 5, {
      due: '2026-05-01',
      crew: { ...inventedCrew, longestShift: 3000, workDays: [] },
      rules: inventedRules,
      hours: [],
      standing: [
        { section: 'A', layers: -4 },
        { section: 'Z', layers: 1 },
      ],
    })
    expect(checkCampaignInput(input).map(problem => problem.code.replace('campaign/', ''))).toEqual([
      'no-time',
      'no-work-days',
      'due-in-the-past',
      'no-weather',
      'doubled-section',
      'hold-without-lift-end',
      'hold-off-the-wall',
      'layer-count',
      'print-time',
      'doubled-section',
      'standing',
      'unknown-section',
    ])
  })
  it('is told in the units of the job', () => {
    const sunk = inventedInput([{ ...a, layerHeight: 0 }], 5)
    const said = (units: 'metric' | 'imperial') => checkCampaignInput(sunk, units).map(({ say }) => say)
    expect(said('metric')[0]).toMatch(/are \S+ m high/)
    expect(said('imperial')[0]).toMatch(/are 0' 0" high/)
  })
  it('is not found in a sound job', () => expect(checkCampaignInput(inventedInput([a], 5))).toEqual([]))
})
