import { describe, expect, it } from 'vitest'
import { checkCampaign } from './check-campaign.js'
import { boundGap } from './fixtures/bound-gap.js'
import { generatedJob } from './fixtures/generated-jobs.js'
import { scheduleCampaign } from './schedule-campaign.js'

/**
 * Some of the jobs that `bound-gap.bench` plans; it prints the gap of each of forty-five. Bounds are proved by relaxation and
 * the campaigns by the checker, so neither can flatter the other.
 */
describe('generated jobs of up to 12 sections of 6 m', () => {
  it.each([3, 4, 24, 26])('job %d is up within one working day or two percent of its proven bound', seed => {
    const input = generatedJob(seed)
    const campaign = scheduleCampaign(input)
    expect(checkCampaign(input, campaign)).toEqual([])
    expect(boundGap(input, campaign).isNear).toBe(true)
  })
})
