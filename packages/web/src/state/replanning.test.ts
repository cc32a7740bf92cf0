import { readFileSync } from 'node:fs'
import { initGeometry } from '@dawnlift/core/geometry'
import { type Plan, planJob } from '@dawnlift/core/plan'
import { doubtOf, type OpenedJob, openJob } from '@dawnlift/formats/job-folder'
import { beforeAll, describe, expect, it } from 'vitest'
import { triedLevers } from './tried-levers.js'

const folder = new URL('../../../../examples/tern-cottage/', import.meta.url)
const read = (name: string) => (name === 'plan.dxf' ? readFileSync(new URL(name, folder)) : undefined)
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

describe('the levers of a standing plan', () => {
  it('are planned from the soonest finish on, and tell how far they are', () => {
    const shares: number[] = []
    const { rows, asPlanned } = triedLevers(plan, (_, share) => shares.push(share))
    const finishes = rows.map(row => row.finish)
    expect(finishes).toEqual([...finishes].sort((a, b) => a - b))
    expect(asPlanned.printDays).toBe(plan.campaign.days.length)
    expect(shares).toEqual([...shares].sort((a, b) => a - b))
    expect(shares.length).toBeGreaterThan(rows.length)
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
