import { describe, expect, it } from 'vitest'
import { instantAt } from '../clock/index.js'
import type { CampaignInput } from './campaign-input.js'
import { checkCampaign } from './check-campaign.js'
import { drawnJobs } from './fixtures/drawn-jobs.js'
import { type SmallJob, smallJobs } from './fixtures/small-jobs.js'
import { inventedCrew, inventedHour, inventedInput, inventedRules, inventedWork } from './invented-site.js'
import { scheduleCampaign } from './schedule-campaign.js'

const STEP = 600

/** The job as the scheduler reads it. Windows are whole hours. */
function inputOf(job: SmallJob): CampaignInput {
  const midnight = instantAt('2026-06-01', 0, 'UTC')
  const isOpen = (day: number, hour: number) =>
    job.windows[day]!.some(([from, until]) => hour * 6 >= from && hour * 6 + 6 <= until)
  const hours = Array.from({ length: job.windows.length * 24 }, (_, i) =>
    inventedHour(midnight + i * 3600, { air: 18, wind: isOpen(Math.floor(i / 24), i % 24) ? 3 : 20 }),
  )
  const work = job.layers.map((count, s) => {
    const ref = `L${s}`
    const afterLayer = job.liftEnd[s]!
    const isInside = afterLayer < count
    return {
      ...inventedWork(String.fromCharCode(65 + s), count, (job.step[s]! * STEP) / 60),
      liftEnds: isInside ? [{ afterLayer, reason: 'lintel' as const, ref }] : [],
      holds:
        isInside && job.holdAtEnd[s]! > 0
          ? [{ afterLayer, duration: job.holdAtEnd[s]! * STEP, reason: 'lintel' as const, ref }]
          : [],
    }
  })
  const given = (value: number) => ({ value, source: 'the job' })
  return inventedInput(work, 1, {
    hours,
    rules: {
      ...inventedRules,
      liftHeight: given(job.rule * 0.02),
      overnightCure: given(job.cure * STEP),
    },
    crew: {
      ...inventedCrew,
      dayStart: job.dayStart * STEP,
      dayEnd: job.dayEnd * STEP,
      longestShift: job.shift * STEP,
      setUp: job.setUp * STEP,
      washOut: job.washOut * STEP,
      changeOver: job.changeOver * STEP,
      workDays: [1, 2, 3, 4, 5, 6, 7],
    },
    physics: {
      standing: inventedInput([], 1).physics.standing,
      longestRest: at => ({ ...inventedInput([], 1).physics.longestRest(at), seconds: 86400 }),
    },
  })
}

describe('small jobs, beside the optimum proved by an outside solver (MiniZinc 2.6.4, Gecode)', () => {
  const solved = [...smallJobs, ...drawnJobs].filter(job => job.optimum !== 'none')
  it.each(solved.map(job => [job.name, job] as const))('%s: up on the same day', (_, job) => {
    const input = inputOf(job)
    const campaign = scheduleCampaign(input)
    expect(checkCampaign(input, campaign)).toEqual([])
    expect(campaign.finished).toBe(true)
    expect(campaign.days.at(-1)?.date).toBe(`2026-06-0${job.optimum}`)
    expect(campaign.bound.met).toBe(true)
  })
  const hopeless = drawnJobs.filter(job => job.optimum === 'none')
  it.each(hopeless.map(job => [job.name, job] as const))('%s: not up in the days given', (_, job) =>
    expect(scheduleCampaign(inputOf(job)).finished).toBe(false),
  )
})
