import { type Campaign, type CampaignInput, campaignFindings, checkCampaign } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import type { SiteLog } from '../log/index.js'
import type { Finding } from '../result/index.js'
import type { PrintHour } from '../weather/index.js'
import { kept } from './plan-cache.js'
import { heldDays, type PlannedDays, plannedDays } from './planned-days.js'

/** The days with what they were planned from, and what was found about them. */
export interface KeptDays {
  readonly hours: readonly PrintHour[]
  readonly input: CampaignInput
  readonly days: PlannedDays
  readonly findings: readonly Finding[]
}

/** What the days of a job rest on. All that the campaign's input is made of follows from these; the same hours are the same list. */
export interface DaysOf {
  readonly job: Job
  readonly hours: readonly PrintHour[]
  readonly log?: SiteLog
}

/** The days of a job; those of the same job, weather and log are not searched again. */
export function keptDays(of: DaysOf, makeInput: () => CampaignInput, cache: Map<string, KeptDays>): KeptDays {
  const key = keyOf(of)
  if (!hasDays(of, cache)) cache.delete(key)
  return kept(cache, key, () => {
    const input = makeInput()
    return found(of, input, plannedDays(input, of.log))
  })
}

/** Whether the days of a job have been searched already. */
export const hasDays = (of: DaysOf, cache: ReadonlyMap<string, KeptDays>): boolean =>
  cache.get(keyOf(of))?.hours === of.hours

/** The days of a standing campaign on the job, not searched; undefined where they do not carry over. */
export function standingDays(
  of: DaysOf,
  makeInput: () => CampaignInput,
  standing: Campaign,
): KeptDays | undefined {
  const input = makeInput()
  const days = heldDays(input, of.log, standing)
  return days && found(of, input, days)
}

const keyOf = ({ job, log }: DaysOf): string => JSON.stringify([job, log])

function found({ job, hours }: DaysOf, input: CampaignInput, days: PlannedDays): KeptDays {
  const { ahead } = days
  const findings = [
    ...campaignFindings(ahead.input, ahead.campaign, job.units),
    ...checkCampaign(ahead.input, ahead.campaign, job.units),
  ]
  return { hours, input, days, findings }
}
