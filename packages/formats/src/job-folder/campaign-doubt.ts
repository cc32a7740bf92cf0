import {
  type CampaignRisk,
  calendarDays,
  countedDraws,
  type MishapRates,
  type ReplayedRun,
  type ReplayYear,
  replayRuns,
  riskOf,
} from '@dawnlift/core/campaign'
import type { Job } from '@dawnlift/core/job'
import { type Plan, restOfPlan, sitePhysics } from '@dawnlift/core/plan'
import { printHours } from '@dawnlift/core/weather'
import { horizonDays } from './job-weather.js'
import type { OpenedJob } from './open-job.js'
import { type WeatherYears, weatherYears } from './weather-years.js'

export interface DoubtWishes {
  /** Courses of weather to meet. */
  readonly replays: number
  readonly rates: MishapRates
  /** A local date whose chance is asked for. */
  readonly by?: string
}

/** A chance with its 95 % interval. */
export interface Chance {
  readonly chance: number
  readonly between: readonly [number, number]
}

/** How sure the finish is. Plain data: survives the way out of a worker. */
export interface Doubt extends Omit<CampaignRisk, 'chanceBy'> {
  /** The date planned, and the chance of being up by then with its 95 % interval. */
  readonly planned: string
  readonly chance: Chance
  /** The date asked for, and its chance. */
  readonly by?: Chance & { readonly date: string }
  /** Calendar days after the planned date that make so much sure; none where the weather ends before. */
  readonly contingency: readonly { readonly share: number; readonly days?: number }[]
  /** What weather was met. */
  readonly weather: string
}

/** A plan, what it was made from, and the files beside its job. */
export interface StandingPlan {
  readonly opened: OpenedJob
  readonly plan: Pick<Plan, 'job' | 'sections' | 'bands' | 'routes' | 'campaign' | 'soFar'>
  readonly read: (name: string) => Uint8Array | undefined
}

/** A part of the courses of weather, by number: `from` is the first of them, `until` the first that is not. */
export interface DoubtShare {
  readonly from: number
  readonly until: number
}

/** Fixed: the same plan has the same doubt, today and tomorrow; and levers meet the same weather and mishaps. */
export const doubtSeed = 20

/** The plan run through many years of weather and mishaps. May take long: whoever must be able to stop it runs it in a worker. */
export function doubtOf(
  standing: StandingPlan,
  wishes: DoubtWishes,
  progress: (stage: 'weather' | 'campaign', share: number) => void,
): Doubt {
  const runs = doubtRuns(standing, wishes, undefined, progress)
  progress('campaign', 1)
  return doubtFrom(standing, wishes, runs)
}

/** Some of the runs of a doubt, or all: shares run apart and put together in order are the same as all run at once. */
export function doubtRuns(
  { opened, plan, read }: StandingPlan,
  wishes: DoubtWishes,
  share: DoubtShare | undefined,
  progress: (stage: 'weather' | 'campaign', share: number) => void,
): readonly ReplayedRun[] {
  progress('weather', 0)
  const { job } = plan
  const met = weatherYears(opened, read, wishes.replays, doubtSeed)
  const { from, until } = share ?? { from: 0, until: met.count }
  const input = restOfPlan(plan)
  const part = { from, until: Math.min(until, met.count) }
  const years = metYears(job, met, part, nearDays(plan), done => progress('campaign', done))
  return replayRuns(input, years, wishes.rates, countedDraws(doubtSeed), { first: from })
}

/** How many courses of weather there are for a wish: years on record may be fewer. */
export const doubtReplays = ({ opened, read }: StandingPlan, wishes: DoubtWishes): number =>
  weatherYears(opened, read, wishes.replays, doubtSeed).count

/** What all runs say together. */
export function doubtFrom(
  { opened, plan, read }: StandingPlan,
  wishes: DoubtWishes,
  runs: readonly ReplayedRun[],
): Doubt {
  const { chanceBy, ...risk } = riskOf(runs)
  const { job, campaign } = plan
  const planned = campaign.days.at(-1)?.date ?? job.calendar.firstDay
  return {
    ...risk,
    planned,
    chance: chanceBy(planned),
    ...(wishes.by === undefined ? {} : { by: { date: wishes.by, ...chanceBy(wishes.by) } }),
    contingency: risk.quantiles.map(({ share, date }) =>
      date === undefined ? { share } : { share, days: calendarDays(planned, date) },
    ),
    weather: weatherYears(opened, read, wishes.replays, doubtSeed).from,
  }
}

/**
 * Days of each course that are worked out at first: well beyond the finish as planned. A run that gets near their end is
 * run again with all days, so that the outcome is the same.
 */
export function nearDays({ job, campaign }: StandingPlan['plan']): number {
  const last = campaign.days.at(-1)?.date
  if (!campaign.finished || last === undefined) return horizonDays
  return Math.min(horizonDays, Math.ceil(1.5 * calendarDays(job.calendar.firstDay, last)) + 21)
}

/** Courses of weather as a job meets them. Made when their turn comes and dropped at the next: sixty seasons of hours do not fit into a tablet. */
export function metYears(
  job: Job,
  met: WeatherYears,
  { from, until }: DoubtShare,
  days: number,
  progress: (share: number) => void,
): readonly ReplayYear[] {
  let now: { readonly index: number; readonly year: ReplayYear } | undefined
  const yearAt = (index: number): ReplayYear => {
    if (now?.index === index) return now.year
    progress((index - from) / (until - from))
    now = { index, year: metYear(job, met, index, days) }
    return now.year
  }
  return Array.from({ length: Math.max(0, until - from) }, (_, i): ReplayYear => {
    const index = from + i
    return {
      label: String(index + 1),
      get hours() {
        return yearAt(index).hours
      },
      longestRest: at => yearAt(index).longestRest!(at),
      ...(days < horizonDays ? { whole: () => metYear(job, met, index, horizonDays) } : {}),
    }
  })
}

function metYear(job: Job, met: WeatherYears, index: number, days: number): ReplayYear {
  const hours = printHours(job, met.yearAt(index, days).hours)
  // How long a layer may rest is a matter of weather and mix alone; sections would only be weighed in vain.
  return { label: String(index + 1), hours, longestRest: sitePhysics(job, [], [], hours).longestRest }
}
