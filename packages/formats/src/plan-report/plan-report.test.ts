import { smallPlan } from '@dawnlift/drawing/examples'
import { describe, expect, it } from 'vitest'
import { planReport, planReportSchema } from './index.js'

describe('a plan for other programs', () => {
  const plan = smallPlan()
  const report = planReport(plan)

  it('keeps to its published schema', () => {
    const read = planReportSchema.safeParse(JSON.parse(JSON.stringify(report)))
    expect(read.success ? [] : read.error.issues).toEqual([])
  })

  it('names the unit with every length, volume, mass and time', () => {
    const bare = JSON.stringify(report).match(/"(length|width|volume|mass|time|along|up|asked|got)":/g)
    expect(bare?.filter(key => !['"asked":'].includes(key)) ?? []).toEqual([])
  })

  it('gives moments that are the plan’s to the millisecond', () => {
    const [day] = plan.campaign.days
    expect(Date.parse(report.printDays[0]!.start) / 1000).toBeCloseTo(day!.start, 3)
  })
})
