import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Pin } from '../job/index.js'
import { campaignFindings } from './campaign-findings.js'
import type { CampaignInput } from './campaign-input.js'
import { checkCampaign } from './check-campaign.js'
import { inventedInput, inventedWork } from './invented-site.js'
import { moveLift } from './move-lift.js'
import { scheduleCampaign } from './schedule-campaign.js'

const house = inventedInput(
  [inventedWork('A', 120, 6), inventedWork('B', 120, 6), inventedWork('C', 100, 7)],
  30,
)
const pinned = (...pins: readonly Pin[]): CampaignInput => ({ ...house, pins })
const liftOf = (input: CampaignInput, id: string) =>
  scheduleCampaign(input)
    .days.flatMap(({ date, lifts }) => lifts.map(lift => ({ date, lift })))
    .find(({ lift }) => lift.id === id)

describe('pins', () => {
  it('let a section rest on its dates', () => {
    const free = scheduleCampaign(house)
    const dates = free.days.filter(day => day.lifts.some(lift => lift.section === 'A')).map(day => day.date)
    const input = pinned({ kind: 'closed', section: 'A', dates })
    const campaign = scheduleCampaign(input)
    expect(checkCampaign(input, campaign)).toEqual([])
    expect(campaign.finished).toBe(true)
    expect(checkCampaign(input, free).map(finding => finding.check)).toContain('campaign/pin')
  })
  it('promise a lift to a date, sooner or later than it would be', () => {
    for (const date of ['2026-06-03', '2026-06-08', '2026-06-11']) {
      const input = pinned({ kind: 'lift', section: 'B', lift: 2, date })
      expect(liftOf(input, 'B2')?.date).toBe(date)
      expect(checkCampaign(input, scheduleCampaign(input))).toEqual([])
    }
  })
  it('keep a lift as told: its day and its layers', () => {
    const layers = { first: 38, last: 61 }
    const input = pinned({ kind: 'lift', section: 'A', lift: 2, date: '2026-06-05', layers })
    expect(liftOf(input, 'A2')).toMatchObject({
      date: '2026-06-05',
      lift: { firstLayer: 38, lastLayer: 61 },
    })
  })
  it('leave layers for more lifts than it would take', () => {
    const input = pinned({ kind: 'lift', section: 'C', lift: 5, date: '2026-06-12' })
    expect(liftOf(input, 'C5')?.date).toBe('2026-06-12')
  })
  it('are kept by the exact search, whose dominance they would break', () => {
    const small = inventedInput([inventedWork('A', 20, 6), inventedWork('B', 20, 6)], 12)
    const input = { ...small, pins: [{ kind: 'lift', section: 'A', lift: 3, date: '2026-06-04' }] as const }
    const campaign = scheduleCampaign(input)
    expect(checkCampaign(input, campaign)).toEqual([])
    expect(campaign.days.find(day => day.date === '2026-06-04')?.lifts.map(lift => lift.id)).toContain('A3')
  })
  it('that cannot be kept say what stands in the way, and the nearest days that fit', () => {
    const sunday = pinned({ kind: 'lift', section: 'A', lift: 2, date: '2026-06-07' })
    const early = pinned({ kind: 'lift', section: 'A', lift: 3, date: '2026-06-02' })
    const tall = pinned({
      kind: 'lift',
      section: 'A',
      lift: 1,
      date: '2026-06-02',
      layers: { first: 1, last: 80 },
    })
    const says = (input: CampaignInput) =>
      campaignFindings(input, scheduleCampaign(input))
        .filter(finding => finding.check === 'campaign/pin-cannot-hold')
        .map(finding => finding.say)
        .join()
    expect(says(sunday)).toMatch(/nobody works that day.*2026-06-05 and 2026-06-08/)
    expect(says(early)).toMatch(/2 days open by then, and needs one for each of 3 lifts.*2026-06-03/)
    expect(says(tall)).toMatch(/80 layers are asked for, 50 fit/)
  })
  it('for a section that is not there ask which was meant', () => {
    const input = pinned({ kind: 'closed', section: 'a', dates: ['2026-06-02'] })
    const found = campaignFindings(input, scheduleCampaign(input))
    expect(found.map(finding => finding.say).join()).toMatch(/“a”.*did you mean “A”/)
  })
})

describe('moving a lift', () => {
  it('plans everything anew around it', () => {
    const moved = moveLift(house, 'B2', '2026-06-09')!
    expect(moved.broken).toEqual([])
    expect(checkCampaign(moved.input, moved.campaign)).toEqual([])
    const day = moved.campaign.days.find(({ date }) => date === '2026-06-09')
    expect(day?.lifts.map(lift => lift.id)).toContain('B2')
  })
  it('to a day it cannot have says why', () => {
    const { broken } = moveLift(house, 'B2', '2026-06-06')!
    expect(broken[0]).toMatchObject({ limit: { kind: 'shift' }, sooner: '2026-06-05', later: '2026-06-08' })
  })
  it('of no section is refused', () => expect(moveLift(house, 'Z1', '2026-06-09')).toBeUndefined())
  // `independent`: the checker, which shares no code with the scheduler, against what moveLift says of its own result.
  it('is told broken exactly when the checker finds a pin broken', () =>
    fc.assert(
      fc.property(
        fc.constantFrom('A', 'B', 'C'),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 16 }),
        fc.constantFrom('A', 'B', 'C'),
        fc.integer({ min: 1, max: 12 }),
        (section, lift, day, resting, from) => {
          const dates = [0, 1].map(i => `2026-06-${String(from + i).padStart(2, '0')}`)
          const input = pinned({ kind: 'closed', section: resting, dates })
          const moved = moveLift(input, `${section}${lift}`, `2026-06-${String(day).padStart(2, '0')}`)!
          const faults = checkCampaign(moved.input, moved.campaign)
          expect(faults.filter(fault => fault.check !== 'campaign/pin')).toEqual([])
          expect(faults.length > 0).toBe(moved.broken.length > 0)
          expect(moved.campaign.finished).toBe(true)
        },
      ),
      { numRuns: 25 },
    ))
})
