import { readFileSync } from 'node:fs'
import { initGeometry } from '@dawnlift/core/geometry'
import { type Plan, planJob } from '@dawnlift/core/plan'
import { beforeAll, describe, expect, it } from 'vitest'
import { openJob } from '../job-folder/index.js'
import { liftChart } from './lift-drawings.js'

const file = new URL('../../../../fixtures/jobs/garden-wall/job.yaml', import.meta.url)
let plan: Plan

beforeAll(async () => {
  await initGeometry()
  const opened = openJob({ document: readFileSync(file, 'utf8'), read: () => undefined })
  if (!opened.ok) throw new Error(opened.problems.map(({ say }) => say).join('\n'))
  plan = (await planJob(opened.value))!
})

describe('the chart of a planned lift', () => {
  it('ends on the safety that the plan was made with, and nowhere under what is asked', () => {
    const lifts = plan.campaign.days.flatMap(day => day.lifts)
    expect(lifts.length).toBeGreaterThan(0)
    for (const lift of lifts) {
      const { moments } = liftChart(plan, lift)
      const last = moments.at(-1)!
      const safety = (last.allowedHeight / last.height) * plan.job.rules.standSafety.value
      // The plan keeps its safeties to two places.
      expect(Math.abs(safety - lift.safety)).toBeLessThan(0.01)
      expect(moments.every(moment => moment.allowedHeight >= moment.height * 0.999)).toBe(true)
    }
  })
})
