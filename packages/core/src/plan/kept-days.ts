import { type CampaignInput, campaignFindings, checkCampaign } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import type { SiteLog } from '../log/index.js'
import type { Finding } from '../result/index.js'
import type { WeatherHour } from '../weather/index.js'
import { kept } from './plan-cache.js'
import { type PlannedDays, plannedDays } from './planned-days.js'

/** The days with what they were planned from, and what was found about them. */
export interface KeptDays {
  readonly input: CampaignInput
  readonly days: PlannedDays
  readonly findings: readonly Finding[]
}

/**
 * The days of a job; those of the same job, weather and log are not searched again. All that the campaign's input is made
 * of follows from these three, so nothing else need be looked at.
 */
export function keptDays(
  { job, hours, log }: { readonly job: Job; readonly hours: readonly WeatherHour[]; readonly log?: SiteLog },
  makeInput: () => CampaignInput,
  cache: Map<string, KeptDays>,
): KeptDays {
  return kept(cache, JSON.stringify([job, hours, log]), () => {
    const input = makeInput()
    const days = plannedDays(input, log)
    const { ahead } = days
    const findings = [
      ...campaignFindings(ahead.input, ahead.campaign, job.units),
      ...checkCampaign(ahead.input, ahead.campaign, job.units),
    ]
    return { input, days, findings }
  })
}
