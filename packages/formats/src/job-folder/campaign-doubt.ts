import {
  type CampaignRisk,
  countedDraws,
  type MishapRates,
  type ReplayYear,
  replayCampaign,
} from '@dawnlift/core/campaign'
import { campaignInput, type Plan, sitePhysics } from '@dawnlift/core/plan'
import { printHours } from '@dawnlift/core/weather'
import type { OpenedJob } from './open-job.js'
import { weatherYears } from './weather-years.js'

export interface DoubtWishes {
  /** Courses of weather to meet. */
  readonly replays: number
  readonly rates: MishapRates
}

/** How sure the finish is. Plain data: survives the way out of a worker. */
export interface Doubt extends Omit<CampaignRisk, 'chanceBy'> {
  /** The date planned, and the chance of being up by then with its 95 % interval. */
  readonly planned: string
  readonly chance: { readonly chance: number; readonly between: readonly [number, number] }
  /** What weather was met. */
  readonly weather: string
}

/** A plan, what it was made from, and the files beside its job. */
export interface StandingPlan {
  readonly opened: OpenedJob
  readonly plan: Plan
  readonly read: (name: string) => Uint8Array | undefined
}

/** Fixed: the same plan has the same doubt, today and tomorrow. */
const seed = 20

/** The plan run through many years of weather and mishaps; undefined when it is no longer wanted. */
export async function doubtOf(
  { opened, plan, read }: StandingPlan,
  wishes: DoubtWishes,
  progress: (stage: 'weather' | 'campaign', share: number) => void,
  isWanted: () => Promise<boolean>,
): Promise<Doubt | undefined> {
  const { job, sections, bands, routes, campaign } = plan
  const { from, yearAt, count } = weatherYears(opened, read, wishes.replays, seed)
  const years: ReplayYear[] = []
  for (let index = 0; index < count; index++) {
    progress('weather', (0.6 * index) / count)
    if (!(await isWanted())) return undefined
    const { label, hours } = yearAt(index)
    const verdicts = printHours(job, hours)
    years.push({
      label,
      hours: verdicts,
      longestRest: sitePhysics(job, sections, bands, verdicts).longestRest,
    })
  }
  progress('campaign', 0.6)
  if (!(await isWanted())) return undefined
  const input = campaignInput(job, sections, bands, routes, campaign.hours)
  const { chanceBy, ...risk } = replayCampaign(input, years, wishes.rates, countedDraws(seed))
  progress('campaign', 1)
  const planned = campaign.days.at(-1)?.date ?? job.calendar.firstDay
  return { ...risk, planned, chance: chanceBy(planned), weather: from }
}
