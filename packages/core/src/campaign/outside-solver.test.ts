import { describe, expect, it } from 'vitest'
import { checkCampaign } from './check-campaign.js'
import { drawnJobs } from './fixtures/drawn-jobs.js'
import { smallJobInput } from './fixtures/small-job-input.js'
import { smallJobs } from './fixtures/small-jobs.js'
import { scheduleCampaign } from './schedule-campaign.js'

describe('small jobs, beside the optimum proved by an outside solver (MiniZinc 2.6.4, Gecode)', () => {
  const solved = [...smallJobs, ...drawnJobs].filter(job => job.optimum !== 'none')
  it.each(solved.map(job => [job.name, job] as const))('%s: up on the same day', (_, job) => {
    const input = smallJobInput(job)
    const campaign = scheduleCampaign(input)
    expect(checkCampaign(input, campaign)).toEqual([])
    expect(campaign.finished).toBe(true)
    expect(campaign.days.at(-1)?.date).toBe(`2026-06-0${job.optimum}`)
    expect(campaign.bound.met).toBe(true)
  })
  const hopeless = drawnJobs.filter(job => job.optimum === 'none')
  it.each(hopeless.map(job => [job.name, job] as const))('%s: not up in the days given', (_, job) =>
    expect(scheduleCampaign(smallJobInput(job)).finished).toBe(false),
  )
})
