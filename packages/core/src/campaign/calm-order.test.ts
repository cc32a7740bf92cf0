import { describe, expect, it } from 'vitest'
import type { CampaignInput } from './campaign-input.js'
import { checkCampaign } from './check-campaign.js'
import { growing, inventedHours, inventedInput, inventedWork, summer } from './invented-site.js'
import { countedDraws } from './random-draws.js'
import { scheduleCampaign } from './schedule-campaign.js'

/** A drawn house: two to ten sections, lintels shared by neighbours, inserts that stop the nozzle, a summer. */
function drawnHouse(seed: number): CampaignInput {
  const draw = countedDraws(seed)
  let count = 0
  const upTo = (most: number) => Math.floor(draw(0, 0, count++) * most)
  const sections = 2 + upTo(9)
  const layers = 100 + 20 * upTo(6)
  const work = Array.from({ length: sections }, (_, i) => {
    const lintel = { afterLayer: 60 + 5 * upTo(4), reason: 'lintel' as const, ref: `L${Math.floor(i / 2)}` }
    const embed = {
      afterLayer: 5 + upTo(50),
      duration: 300,
      reason: 'embed' as const,
      ref: `E${i}`,
    }
    const holds = [embed, { ...lintel, duration: 900 }]
    return { ...inventedWork(`S${i}`, layers, 3 + upTo(6)), holds, liftEnds: [lintel] }
  })
  const first = upTo(90)
  const days = 30 + sections * 8
  return inventedInput(work, days, {
    hours: inventedHours('2026-06-01', days, (day, hour) => summer((day + first) % 120, hour)),
    physics: growing(450, 9000, 1.6),
  })
}

describe('the order of a campaign', () => {
  // A lift of a layer or two that no lift ends force: the stretch it lies in has more.
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('has no needless low lift (drawn house %d)', seed => {
    const input = drawnHouse(seed)
    const campaign = scheduleCampaign(input)
    expect(checkCampaign(input, campaign)).toEqual([])
    expect(campaign.finished).toBe(true)
    const low = campaign.days.flatMap(day => day.lifts).filter(lift => lift.lastLayer - lift.firstLayer < 2)
    expect(low.map(lift => lift.id)).toEqual([])
  })
  it('prints one section a day where that is up as soon as two a day', () => {
    const input = inventedInput([inventedWork('A', 100, 10), inventedWork('B', 100, 10)], 20)
    const campaign = scheduleCampaign(input)
    expect(campaign.days.map(day => day.lifts.length)).toEqual([1, 1, 1, 1])
  })
})
