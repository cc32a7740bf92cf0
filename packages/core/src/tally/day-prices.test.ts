import { describe, expect, it } from 'vitest'
import { exampleCampaign, exampleJob, exampleLift } from '../trade/trade-example.js'
import { dayPrices } from './day-prices.js'
import { tallyOf } from './tally-of.js'

const [monday, tuesday] = ['2026-07-13', '2026-07-14'] as const
const job = exampleJob({})
const [first, second] = [exampleLift('A', 1, monday, 1, 50), exampleLift('B', 1, monday, 1, 50)]

/** The same walls printed on one day, and on two. */
const oneDay = exampleCampaign([
  [monday, first],
  [monday, second],
])
const twoDays = exampleCampaign([
  [monday, first],
  [tuesday, exampleLift('B', 1, tuesday, 1, 50)],
])

describe('day prices', () => {
  const hours = ({ days }: typeof oneDay) => days.reduce((sum, day) => sum + (day.end - day.start) / 3600, 0)
  it('are all that differs between two ways to print the same walls', () => {
    const { machinePerDay, washedOutPerDay, crewPerHour } = dayPrices(job)
    const more =
      tallyOf({ job, campaign: twoDays }).cost.total - tallyOf({ job, campaign: oneDay }).cost.total
    const byDays = machinePerDay + washedOutPerDay + (hours(twoDays) - hours(oneDay)) * crewPerHour
    expect(washedOutPerDay).toBeGreaterThan(0)
    expect(more).toBeCloseTo(byDays, 6)
  })
})
