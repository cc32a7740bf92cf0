import { readFileSync } from 'node:fs'
import { initGeometry } from '@dawnlift/core/geometry'
import { waysOf } from '@dawnlift/core/lever'
import { type Plan, planJob } from '@dawnlift/core/plan'
import { doubtOf, type OpenedJob, openJob } from '@dawnlift/formats/job-folder'
import { beforeAll, describe, expect, it } from 'vitest'

const folder = new URL('../../../../examples/torrenubia/', import.meta.url)
const beside = ['plan.dxf', 'mix-tests.csv']
const read = (name: string) => (beside.includes(name) ? readFileSync(new URL(name, folder)) : undefined)
const noMishaps = { breakdownsPerHour: 0, repairHours: 0, lateChance: 0, lateHours: 0 }

let opened: OpenedJob
let plan: Plan

beforeAll(async () => {
  await initGeometry()
  const job = openJob({ document: readFileSync(new URL('job.yaml', folder), 'utf8'), read })
  if (!job.ok) throw new Error(job.problems[0]?.say)
  opened = job.value
  plan = (await planJob(opened))!
}, 60_000)

describe('what waiting buys', () => {
  const shares: number[] = []
  let ways: ReturnType<typeof waysOf>
  beforeAll(() => {
    ways = waysOf(plan, (_, share) => shares.push(share))
  })
  it('is told beside the plan as it stands, at its own cost and date', () => {
    const planned = ways.find(way => way.isPlanned)
    expect(planned?.date).toBe(plan.campaign.days.at(-1)?.date)
    expect(planned?.cost).toBeCloseTo(plan.tally.cost.total, 6)
  })
  it('names one way that each aim of the job leads to', () => {
    for (const aim of ['soonest', 'cheapest', 'calmest'] as const)
      expect(ways.filter(way => way.ledToBy.includes(aim))).toHaveLength(1)
  })
  it('tells how far it is', () => expect(shares.length).toBeGreaterThan(4))
  it('is what the job is planned to when it has that aim', async () => {
    for (const aim of ['cheapest', 'calmest'] as const) {
      const aimed = (await planJob({ ...opened, job: { ...opened.job, aim } }))!
      const way = ways.find(each => each.ledToBy.includes(aim))!
      expect([aimed.campaign.days.at(-1)?.date, aimed.campaign.days.length]).toEqual([
        way.date,
        way.printDays,
      ])
    }
  })
})

describe('the doubt of a standing plan', () => {
  const doubt = (replays: number, rates = noMishaps) =>
    doubtOf({ opened, plan, read }, { replays, rates }, () => undefined)
  it('is the same each time it is asked for', () => expect(doubt(6)).toEqual(doubt(6)))
  it('names later dates the surer one wants to be', () => {
    const dates = doubt(12).quantiles.map(({ date }) => date ?? '~')
    expect(dates).toEqual([...dates].sort())
  })
  it('grows with breakdowns', () => {
    const broken = doubt(12, { ...noMishaps, breakdownsPerHour: 0.5, repairHours: 5 })
    const whole = doubt(12)
    const date = ({ quantiles }: typeof whole) => quantiles[1]?.date ?? '~'
    expect(broken.chance.chance).toBeLessThanOrEqual(whole.chance.chance)
    expect(date(broken) > date(whole)).toBe(true)
  })
})
