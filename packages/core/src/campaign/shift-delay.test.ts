import { describe, expect, it } from 'vitest'
import { instantAt } from '../clock/index.js'
import { checkCampaign } from './check-campaign.js'
import { inventedHours, inventedInput, inventedWork } from './invented-site.js'
import { scheduleCampaign } from './schedule-campaign.js'

describe('a shift that begins later for the evening to fit', () => {
  // Rain from three to four. A takes 4.5 hours in the morning; B, on a lintel that takes 45 minutes to set, has cured at four.
  // A may be moved back to a quarter to three, half an hour of change-over before the lintel, and no further.
  const lintel = { afterLayer: 50, reason: 'lintel' as const, ref: 'L1' }
  const input = inventedInput(
    [
      inventedWork('A', 50, 5.4),
      { ...inventedWork('B', 100, 4.1), liftEnds: [lintel], holds: [{ ...lintel, duration: 2700 }] },
    ],
    1,
    {
      hours: inventedHours('2026-06-01', 1, (_, hour) => ({ air: 18, rain: hour === 15 ? 20 : 0 })),
      standing: [{ section: 'B', layers: 50, lastEnd: instantAt('2026-06-01', 4 * 3600, 'UTC') }],
    },
  )
  const [day] = scheduleCampaign(input).days
  const [first, second] = day!.lifts

  it('leaves the crew the time to change over and for the planned stops before the next lift', () => {
    expect([first!.section, second!.section]).toEqual(['A', 'B'])
    expect(second!.start - first!.end).toBeGreaterThanOrEqual(1800 + 2700)
    expect(checkCampaign(input, scheduleCampaign(input))).toEqual([])
  })
})
