import type { Campaign } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { findCampaign } from './find-campaign.js'
import { prepareGround, standAtStart } from './ground.js'
import { finishBound, prepareBounds, printDaysBound } from './lower-bound.js'
import { campaignOf } from './schedule-campaign.js'

/** What no campaign of an input can beat. */
export interface LeastCampaign {
  /** No campaign is up before this local date; undefined: the known hours do not hold one. */
  readonly date?: string
  readonly printDays: number
}

/** Bound of an input without planning it. */
export function leastCampaign(input: CampaignInput): LeastCampaign {
  const ground = prepareGround(input)
  const bounds = prepareBounds(ground)
  const start = standAtStart(ground)
  const date = ground.days[finishBound(ground, bounds, start, 0)]?.date
  const printDays = printDaysBound(ground, bounds, start)
  return date === undefined ? { printDays } : { date, printDays }
}

/** Searched as thoroughly as the plan itself; each lift's own levers are left untold, nobody reads them here. */
export function scheduleLevered(input: CampaignInput): Campaign {
  const ground = prepareGround(input)
  const bounds = prepareBounds(ground)
  const start = standAtStart(ground)
  return campaignOf(ground, bounds, start, findCampaign(ground, bounds, start, 'full'), 'brisk')
}
