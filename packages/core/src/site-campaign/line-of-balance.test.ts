import { describe, expect, it } from 'vitest'
import { scheduleCampaign } from '../campaign/index.js'
import { inventedCrew, inventedInput, inventedWork } from '../campaign/invented-site.js'

/**
 * Line of balance [CarrMeyer1974], [LobLecture]: n like units, each done in T₁, handed over at the rate R, take T = T₁ + (n − 1)/R;
 * for an activity of duration D that takes C = D·R crews.
 */
const daysByBalance = (unit: number, units: number, rate: number): number => unit + (units - 1) / rate

const days = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 86_400_000

describe('like units in a row, beside the line of balance', () => {
  // Published relation, numbers by hand: towers of four lifts, a lift a day each, so T₁ = 4 days. A shift of 600 min holds set-up, two lifts of 250 min and a
  // change of 30 min: two towers rise at once. Pairs are handed over every four days, R = 1/4: 4 + (3 − 1)·4 = 12 days for six towers. C = D·R: a
  // tower takes 4 days, two towers in four days are R = 1/2: two lifts of crew work a day.
  it.each([
    [2, 4],
    [4, 8],
    [6, 12],
  ])('%d towers of four lifts, two a day, take %d days', (towers, expected) => {
    const work = Array.from({ length: towers }, (_, i) => inventedWork(`T${i}`, 200, 5))
    const crew = { ...inventedCrew, workDays: [1, 2, 3, 4, 5, 6, 7] }
    const campaign = scheduleCampaign(inventedInput(work, 40, { crew }), 'brisk')
    const balance = daysByBalance(4, towers / 2, 1 / 4)
    expect(balance).toBe(expected)
    expect(campaign.days.length).toBe(balance)
    expect(Math.max(...campaign.days.map(day => day.lifts.length))).toBe(2)
  })
  // Published ([LobLecture], read second-hand): 20 sections at three a week. The last begins (20 − 1)/3 weeks = 44.3 days after the first.
  // Ours on Monday, Wednesday and Friday: slots lie two or three days apart, so within 2⅓ days.
  it('twenty sections at three a week begin the last as many days after the first as the example says', () => {
    const work = Array.from({ length: 20 }, (_, i) =>
      inventedWork(`S${String(i).padStart(2, '0')}`, 50, 10.5),
    )
    const crew = { ...inventedCrew, workDays: [1, 3, 5] }
    const campaign = scheduleCampaign(inventedInput(work, 70, { crew }), 'brisk')
    expect(campaign.days.every(day => day.lifts.length === 1)).toBe(true)
    const last = days(campaign.days[0]!.date, campaign.days.at(-1)!.date)
    expect(Math.abs(last - (19 / 3) * 7)).toBeLessThanOrEqual(7 / 3)
  })
})
