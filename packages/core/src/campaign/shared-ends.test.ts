import { describe, expect, it } from 'vitest'
import { checkCampaign } from './check-campaign.js'
import { inventedHours, inventedInput, inventedWork, summer } from './invented-site.js'
import { scheduleCampaign } from './schedule-campaign.js'
import { isHeldBack, sharedEnds } from './shared-ends.js'

const lintel = (afterLayer: number) => [{ afterLayer, reason: 'lintel' as const, ref: 'D1' }]
const quick = { ...inventedWork('A', 60, 3), liftEnds: lintel(30) }
const slow = { ...inventedWork('B', 60, 12), liftEnds: lintel(40) }
const hours = inventedHours('2026-06-01', 30, (day, hour) => summer(day, hour))
const apart = { ...slow, liftEnds: [{ ...lintel(40)[0]!, ref: 'D2' }] }

/** The quick section as early as it can be: its second lift, above the lintel, on the second day. */
const pins = [{ kind: 'lift', section: 'A', lift: 2, date: '2026-06-02' }] as const

const dayAbove = (work: readonly (typeof quick)[], section: string, layer: number): string => {
  const campaign = scheduleCampaign(inventedInput(work, 30, { hours, pins }))
  return campaign.days.find(day =>
    day.lifts.some(lift => lift.section === section && lift.lastLayer > layer),
  )!.date
}

describe('a lintel on two sections', () => {
  it('holds the first one back until the other stands up to it', () => {
    const day = (work: readonly (typeof quick)[], section: string, layer: number) =>
      dayAbove(work, section, layer)
    expect(day([quick, slow], 'A', 30) > day([quick, slow], 'B', 39)).toBe(true)
    // Alone, each with a lintel of its own, the quick one goes on while the slow one is still below.
    expect(day([quick, apart], 'A', 30) <= day([quick, apart], 'B', 39)).toBe(true)
  })

  it('is told by the checker when one section goes on too soon', () => {
    const input = inventedInput([quick, slow], 30, { hours })
    const tooSoon = scheduleCampaign(inventedInput([quick, apart], 30, { hours, pins }))
    expect(checkCampaign(input, scheduleCampaign(input))).toEqual([])
    expect(checkCampaign(input, tooSoon).map(({ check, at }) => [check, at])).toEqual([
      ['campaign/shared-lintel', 'A'],
    ])
  })

  it('binds only at its own height', () => {
    const [ends] = sharedEnds([quick, slow])
    expect([29, 30, 31].map(height => isHeldBack(ends!, [height, 39], height))).toEqual([false, true, false])
    expect(isHeldBack(ends!, [30, 40], 30)).toBe(false)
  })
})
