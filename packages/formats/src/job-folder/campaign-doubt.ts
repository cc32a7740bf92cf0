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
import { type WeatherYears, weatherYears } from './weather-years.js'

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

/** The plan run through many years of weather and mishaps. May take long: whoever must be able to stop it runs it in a worker. */
export function doubtOf(
  { opened, plan, read }: StandingPlan,
  wishes: DoubtWishes,
  progress: (stage: 'weather' | 'campaign', share: number) => void,
): Doubt {
  const { job, sections, bands, routes, campaign } = plan
  progress('weather', 0)
  const { from, yearAt, count } = weatherYears(opened, read, wishes.replays, seed)
  const input = campaignInput(job, sections, bands, routes, campaign.hours)
  const years = lazyYears(plan, yearAt, count, progress)
  const { chanceBy, ...risk } = replayCampaign(input, years, wishes.rates, countedDraws(seed))
  progress('campaign', 1)
  const planned = campaign.days.at(-1)?.date ?? job.calendar.firstDay
  return { ...risk, planned, chance: chanceBy(planned), weather: from }
}

type Met = Required<Pick<ReplayYear, 'hours' | 'longestRest'>>

/** Made when its turn comes and dropped at the next: sixty seasons of hours do not fit into a tablet. */
function lazyYears(
  { job }: Plan,
  yearAt: WeatherYears['yearAt'],
  count: number,
  progress: (stage: 'campaign', share: number) => void,
): readonly ReplayYear[] {
  let now: { readonly index: number; readonly met: Met } | undefined
  const met = (index: number): Met => {
    if (now?.index === index) return now.met
    progress('campaign', index / count)
    const hours = printHours(job, yearAt(index).hours)
    // How long a layer may rest is a matter of weather and mix alone; sections would only be weighed in vain.
    now = { index, met: { hours, longestRest: sitePhysics(job, [], [], hours).longestRest } }
    return now.met
  }
  return Array.from(
    { length: count },
    (_, index): ReplayYear => ({
      label: String(index + 1),
      get hours() {
        return met(index).hours
      },
      longestRest: at => met(index).longestRest(at),
    }),
  )
}
