import { type Campaign, type LeastCampaign, mostBinding } from '../campaign/index.js'
import type { LimitKind } from '../limit/index.js'
import type { CubicMetres, Seconds } from '../quantity/index.js'
import { campaignCost, costWithoutDays, splitMix } from '../tally/index.js'
import type { JobLever, JobLeverKind } from './job-lever.js'
import { jobLeverFacts } from './job-lever.js'
import type { LeveredJob } from './lever-bench.js'
import { HANDOVER } from './pull-job-lever.js'

/** What the lead pays for a lever that the job's rates do not price, in the job's currency. */
export interface LeverPrice {
  readonly once: number
  readonly perPrintDay: number
}

export type LeverPrices = Readonly<Partial<Record<JobLeverKind, LeverPrice>>>

/** A campaign with levers pulled, planned for real. */
export interface JobLeverRow {
  readonly levers: readonly JobLever[]
  readonly sections: number
  readonly printDays: number
  readonly finished: boolean
  /** Local date of the last print day; empty without one. */
  readonly finishDate: string
  /** Calendar days sooner than the plan as it stands; negative: later. Nothing where one of them is not up. */
  readonly daysGained?: number
  readonly printTime: Seconds
  readonly siteTime: Seconds
  readonly lifts: number
  readonly volume: CubicMetres
  /** Smallest safety factor on standing of any lift. */
  readonly leastSafety: number
  /**
   * By the job's rates, with what is paid for the levers as far as it is known. With a site log, of the days to come, without what
   * a job costs whatever its days.
   */
  readonly cost: number
  /** Over the plan as it stands. */
  readonly costMore: number
  /** What is needed besides and has no price. */
  readonly unpriced: readonly string[]
  /** The limit that then stops most layers. */
  readonly bindsNext?: LimitKind
}

export function leverRow(
  pulled: LeveredJob,
  campaign: Campaign,
  prices: LeverPrices,
): Omit<JobLeverRow, 'daysGained' | 'costMore'> {
  const lifts = campaign.days.flatMap(day => day.lifts)
  const bindsNext = mostBinding(campaign)
  const kinds = pulled.levers.map(lever => lever.kind)
  return {
    levers: pulled.levers,
    sections: pulled.input.work.length,
    printDays: campaign.days.length,
    finished: campaign.finished,
    finishDate: campaign.days.at(-1)?.date ?? '',
    printTime: lifts.reduce((sum, lift) => sum + lift.end - lift.start, 0),
    siteTime: campaign.days.reduce((sum, day) => sum + day.end - day.start, 0),
    lifts: lifts.length,
    volume: lifts.reduce((sum, lift) => sum + lift.volume, 0),
    leastSafety: Math.min(...lifts.map(lift => lift.safety)),
    cost: campaignCost(pulled.job, campaign, isBegun(pulled)) + extras(pulled, campaign, prices),
    unpriced: kinds.flatMap(kind => (prices[kind] ? [] : (jobLeverFacts[kind].unpriced ?? []))),
    ...(bindsNext === undefined ? {} : { bindsNext }),
  }
}

/** What levers cost besides the days: hires, and both crews at each handover. */
function extras({ levers, job }: LeveredJob, { days }: Campaign, prices: LeverPrices): number {
  const hired = levers.reduce((sum, { kind }) => {
    const price = prices[kind]
    return price ? sum + price.once + price.perPrintDay * days.length : sum
  }, 0)
  const second = levers.find(lever => lever.kind === 'second-crew')
  if (!second) return hired
  const alone = job.crew.longestShift / second.setting
  const handovers = days.filter(day => day.end - day.start > alone).length
  return hired + (handovers * HANDOVER * job.crew.size * job.costs.crewPerHour) / 3600
}

const isBegun = ({ input }: LeveredJob): boolean => input.standing !== undefined

/** A cost that no campaign of this job can be under: its bound on days, the print time left, set-ups and wash-outs. */
export function leastCost(pulled: LeveredJob, least: LeastCampaign, prices: LeverPrices): number {
  const { levers, job, input } = pulled
  const { costs, crew } = job
  const standing = new Map(input.standing?.map(({ section, layers }) => [section, layers]))
  const left = (of: (work: LeveredJob['input']['work'][number]) => readonly number[]) =>
    input.work.reduce(
      (total, work) =>
        of(work)
          .slice(standing.get(work.section) ?? 0)
          .reduce((a, b) => a + b, total),
      0,
    )
  const { dry, water } = splitMix(left(work => work.volumes) * job.mix.density, job.mix.waterRatio)
  const site = left(work => work.printTimes) + least.printDays * (crew.setUp + crew.washOut)
  const hired = levers.reduce((total, { kind }) => {
    const price = prices[kind]
    return price ? total + price.once + price.perPrintDay * least.printDays : total
  }, 0)
  return (
    (isBegun(pulled) ? 0 : costWithoutDays(job)) +
    least.printDays * costs.machinePerDay +
    (site / 3600) * crew.size * costs.crewPerHour +
    (dry / 1000) * costs.materialPerTonne +
    (water / 1000) * costs.waterPerCubicMetre +
    hired
  )
}

/** Up before not up, then soonest, then cheapest. */
export const compareLeverRows = (a: JobLeverRow, b: JobLeverRow): number =>
  Number(b.finished) - Number(a.finished) ||
  (a.finishDate < b.finishDate ? -1 : a.finishDate > b.finishDate ? 1 : 0) ||
  a.cost - b.cost
