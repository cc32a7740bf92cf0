import type { CampaignInput, PrintDay } from '../campaign/index.js'
import { leftFrom } from '../log/index.js'
import { campaignInput } from './campaign-input.js'
import type { Plan } from './plan.js'

/** What a plan's days to come are planned from: the whole job, or with a site log what is left of it from what stands. */
export function restOfPlan(
  plan: Pick<Plan, 'job' | 'sections' | 'bands' | 'routes' | 'campaign' | 'soFar'>,
): CampaignInput {
  const { job, sections, bands, routes, campaign, soFar } = plan
  const input = campaignInput(job, sections, bands, routes, campaign.hours)
  return soFar ? leftFrom(input, soFar) : input
}

/** The print days of a plan, with a site log as far as they are still to come. */
export function daysToCome({ campaign, soFar }: Pick<Plan, 'campaign' | 'soFar'>): readonly PrintDay[] {
  if (!soFar) return campaign.days
  return campaign.days.flatMap(day => {
    const lifts = day.lifts.filter(lift => lift.start >= soFar.now)
    return lifts.length > 0 ? [{ ...day, lifts }] : []
  })
}
