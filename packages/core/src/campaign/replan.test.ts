import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Campaign } from './campaign.js'
import { checkCampaign } from './check-campaign.js'
import { inventedHouse, inventedInput, inventedWork } from './invented-site.js'
import { type AsBuilt, replan } from './replan.js'
import { scheduleCampaign } from './schedule-campaign.js'

const house = inventedHouse()
const told = scheduleCampaign(house)

/** What stands at a moment if everything went as told; `short` layers less of the last lift. */
function standingAt(campaign: Campaign, now: number, short = 0): AsBuilt['standing'] {
  const sections = [...new Set(campaign.days.flatMap(day => day.lifts.map(lift => lift.section)))]
  return sections.flatMap(section => {
    const lifts = campaign.days.flatMap(day => day.lifts).filter(lift => lift.section === section)
    const done = lifts.filter(lift => lift.end <= now).at(-1)
    if (!done) return []
    const isLatest =
      campaign.days
        .flatMap(day => day.lifts)
        .filter(lift => lift.end <= now)
        .at(-1) === done
    return [{ section, layers: Math.max(0, done.lastLayer - (isLatest ? short : 0)), lastEnd: done.end }]
  })
}

const evening = (day: number) => told.days[day]!.end

describe('re-planning', () => {
  it('changes nothing when everything stands as told', () => {
    const now = evening(3)
    const { campaign, changes, kept } = replan(house, { now, standing: standingAt(told, now) }, told)
    expect(changes).toEqual([])
    expect(kept).toBe(true)
    expect(campaign.days.map(day => day.date)).toEqual(told.days.slice(4).map(day => day.date))
  })

  it('keeps every rule and the told days when a lift broke off ten layers short', () => {
    const now = evening(3)
    const asBuilt = { now, standing: standingAt(told, now, 10) }
    const { campaign, changes } = replan(house, asBuilt, told)
    const input = { ...house, calendar: { ...house.calendar, now }, standing: asBuilt.standing }
    expect(checkCampaign(input, campaign)).toEqual([])
    expect(campaign.finished).toBe(true)
    const lifts = campaign.days.flatMap(day => day.lifts).length
    expect(new Set(changes.map(change => change.ref)).size).toBeLessThan(lifts)
  })

  it('tells of each lift still to come what would buy layers, as before it was begun', () => {
    const now = evening(3)
    const { campaign } = replan(house, { now, standing: standingAt(told, now) }, told)
    // Days gained count from what stands, layers do not: they rest on the lift alone.
    const layers = ({ days }: Campaign) =>
      days.flatMap(day => day.lifts.map(({ id, nextGain }) => [id, nextGain?.lever, nextGain?.layers]))
    const before = layers({ ...told, days: told.days.slice(4) })
    expect(before.some(([, lever]) => lever !== undefined)).toBe(true)
    expect(layers(campaign)).toEqual(before)
  })

  it('lets the rest of a shift already begun be as long as it was going to be', () => {
    const day = told.days[5]!
    const now = day.lifts[0]!.end
    const asBuilt = { now, standing: standingAt(told, now), shiftBegan: day.start }
    const { campaign } = replan(house, asBuilt, told)
    const today = campaign.days.find(one => one.date === day.date)
    expect(today).toBeDefined()
    expect(today!.end - day.start).toBeLessThanOrEqual(house.crew.longestShift)
    expect(today!.lifts.every(lift => lift.section !== day.lifts[0]!.section)).toBe(true)
  })

  it('sets up once a shift: the next section only asks for a change-over', () => {
    const day = told.days.find(one => one.lifts.length > 1)!
    const [first, second] = day.lifts
    const now = first!.end
    const standing = standingAt(told, now)
    const { campaign } = replan(house, { now, standing, shiftBegan: day.start }, told)
    expect(campaign.days[0]!.lifts[0]).toMatchObject({ section: second!.section, start: second!.start })
    const input = { ...house, calendar: { ...house.calendar, now }, standing, shiftBegan: day.start }
    expect(checkCampaign(input, campaign)).toEqual([])
  })

  it('waits for the set-up of a shift that has just begun', () => {
    const day = told.days[0]!
    const now = day.start + 60
    const { campaign } = replan(house, { now, standing: [], shiftBegan: day.start }, told)
    expect(campaign.days[0]!.lifts[0]!.start).toBe(day.lifts[0]!.start)
  })

  it('tells those who set a lintel that its morning has moved', () => {
    const lintel = { afterLayer: 40, reason: 'lintel' as const, ref: 'D1' }
    const work = {
      ...inventedWork('A', 90, 5),
      liftEnds: [lintel],
      holds: [{ ...lintel, duration: 900 }],
    }
    const input = inventedInput([work], 20)
    const plan = scheduleCampaign(input)
    const now = plan.days[0]!.end
    const standing = [{ section: 'A', layers: 25, lastEnd: plan.days[0]!.lifts[0]!.end }]
    const { changes } = replan(input, { now, standing }, plan)
    expect(changes).toContainEqual(expect.objectContaining({ who: 'lintel', ref: 'D1', kind: 'moved' }))
  })

  it('keeps every rule whatever stands', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10 }), fc.integer({ min: 0, max: 12 }), (day, short) => {
        const now = evening(day)
        const standing = standingAt(told, now, short)
        const { campaign } = replan(house, { now, standing }, told)
        const input = { ...house, calendar: { ...house.calendar, now }, standing }
        expect(checkCampaign(input, campaign)).toEqual([])
        expect(campaign.finished).toBe(true)
      }),
      { numRuns: 12 },
    )
  })
})
