import { type CampaignInput, campaignFindings, checkCampaign } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import type { SiteLog } from '../log/index.js'
import type { Finding } from '../result/index.js'
import type { PrintHour } from '../weather/index.js'
import { kept } from './plan-cache.js'
import { type PlannedDays, plannedDays } from './planned-days.js'

/** The days with what they were planned from, and what was found about them. */
export interface KeptDays {
  readonly hours: readonly PrintHour[]
  readonly input: CampaignInput
  readonly days: PlannedDays
  readonly findings: readonly Finding[]
}

/**
 * The days of a job; those of the same job, weather and log are not searched again. All that the campaign's input is made
 * of follows from these three, so nothing else need be looked at. The same hours are the same list.
 */
export function keptDays(
  { job, hours, log }: { readonly job: Job; readonly hours: readonly PrintHour[]; readonly log?: SiteLog },
  makeInput: () => CampaignInput,
  cache: Map<string, KeptDays>,
): KeptDays {
  const key = JSON.stringify([job, log])
  if (cache.get(key)?.hours !== hours) cache.delete(key)
  return kept(cache, key, () => {
    const input = makeInput()
    const days = plannedDays(input, log)
    const { ahead } = days
    const findings = [
      ...campaignFindings(ahead.input, ahead.campaign, job.units),
      ...checkCampaign(ahead.input, ahead.campaign, job.units),
    ]
    return { hours, input, days, findings }
  })
}
