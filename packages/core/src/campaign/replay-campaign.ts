import type { LimitKind } from '../limit/index.js'
import type { PrintHour } from '../weather/index.js'
import type { LiftPhysics } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { chanceInterval, empiricalQuantile, meanWithin, quantileRanks } from './confidence.js'
import { type Ground, prepareGround, standAtStart } from './ground.js'
import { hourTable } from './hour-table.js'
import { type Bounds, prepareBounds } from './lower-bound.js'
import type { Draw } from './random-draws.js'
import { type ReplayedRun, replayOnce } from './replay-once.js'

/** One year of weather, its hours moved to the campaign's own dates. */
export interface ReplayYear {
  readonly label: string
  readonly hours: readonly PrintHour[]
  /** Resting time in this weather; without it the input's own is used. */
  readonly longestRest?: LiftPhysics['longestRest']
  /** The whole year where `hours` are only its beginning: asked for when the walls are not up well before they end. */
  readonly whole?: () => ReplayYear
}

/** What goes wrong besides the weather. The lead's own figures; zero leaves a cause out. */
export interface MishapRates {
  /** Breakdowns per hour of printing, and the mean time until it prints again [h]. */
  readonly breakdownsPerHour: number
  readonly repairHours: number
  /** Chance that the day's mix comes late, and by how long on average [h]. */
  readonly lateChance: number
  readonly lateHours: number
}

export type LostCause = LimitKind | 'breakdown' | 'late delivery'

export interface FinishQuantile {
  readonly share: number
  /** Undefined: more than the rest of the replays were not up when their weather ended. */
  readonly date?: string
  /** Dates between which the true one lies with about 95 % confidence, as far as the replays reach. */
  readonly between: readonly [string | undefined, string | undefined]
}

/** Working days lost to one cause: their mean over all replays, and how far it may lie off the true one (95 %). */
export interface LostDays {
  readonly cause: LostCause
  readonly days: number
  readonly within: number
}

export interface CampaignRisk {
  readonly replays: number
  readonly finished: number
  readonly quantiles: readonly FinishQuantile[]
  /** Mean working days without a single layer, by what kept them so. */
  readonly lost: readonly LostDays[]
  /** Chance of being up by a date, with its 95 % interval. */
  readonly chanceBy: (date: string) => {
    readonly chance: number
    readonly between: readonly [number, number]
  }
  readonly finishes: readonly (string | undefined)[]
  readonly caution: string
}

export interface ReplayOptions {
  /** Each year is replayed so many times with other mishaps. */
  readonly repeats?: number
  /** Number of the first year, where the years are a part of many: it meets the mishaps it would meet among all. */
  readonly first?: number
}

const CAUTION =
  'Each morning knows its day’s weather and prints the most urgent section as high as it goes; standing is sampled. ' +
  'Good for how sure a date is, not for printing by.'

/** How sure the finish is: the campaign run through many years of weather and mishaps. */
export const replayCampaign = (
  input: CampaignInput,
  years: readonly ReplayYear[],
  rates: MishapRates,
  draw: Draw,
  options: ReplayOptions = {},
): CampaignRisk => riskOf(replayRuns(input, years, rates, draw, options))

/** The runs alone, in the order of their years: shares of them can be run apart and put together by `riskOf`. */
export function replayRuns(
  input: CampaignInput,
  years: readonly ReplayYear[],
  rates: MishapRates,
  draw: Draw,
  { repeats = 1, first = 0 }: ReplayOptions = {},
): readonly ReplayedRun[] {
  const base = prepareGround(input)
  return years.flatMap((year, y) => {
    const drawn = (k: number) => (day: number, purpose: number) =>
      draw((first + y) * repeats + k, day, purpose)
    const runs = replayYear(base, year, rates, repeats, drawn)
    return year.whole && runs.some(run => isNearEnd(run, year))
      ? replayYear(base, year.whole(), rates, repeats, drawn)
      : runs
  })
}

function replayYear(
  base: Ground,
  year: ReplayYear,
  rates: MishapRates,
  repeats: number,
  drawn: (k: number) => (day: number, purpose: number) => number,
): readonly ReplayedRun[] {
  const { ground, bounds } = yearGround(base, year)
  const start = standAtStart(ground)
  return Array.from({ length: repeats }, (_, k) => replayOnce(ground, bounds, start, rates, drawn(k)))
}

/**
 * Whether the end of the known hours may have had a say in a run. A run that is up days before looks at no later hour:
 * what is urgent is told by the days each section alone would take, and none takes longer than the run.
 */
function isNearEnd({ finish }: ReplayedRun, { hours }: ReplayYear): boolean {
  const last = hours.at(-1)
  return finish === undefined || last === undefined || Date.parse(finish) / 1000 > last.start - MARGIN
}

/** A finish this close to the end of the hours is run again with all of them [s]. */
const MARGIN = 3 * 86400

/** The campaign's days in another year's hours. The book of standing is shared; only its estimates are used. */
function yearGround(base: Ground, year: ReplayYear): { readonly ground: Ground; readonly bounds: Bounds } {
  const longestRest = year.longestRest ?? base.input.physics.longestRest
  const last = year.hours.at(-1)?.start ?? 0
  const table = hourTable(year.hours, { ...base.input.physics, longestRest })
  const ground: Ground = {
    ...base,
    input: { ...base.input, hours: year.hours },
    table,
    days: base.days.filter(day => day.begins <= last),
    reaches: new Map(),
    standing: 'sampled',
  }
  return { ground, bounds: prepareBounds(ground) }
}

/** What a set of runs says together. */
export function riskOf(runs: readonly ReplayedRun[]): CampaignRisk {
  const finishes = runs.map(run => run.finish)
  // Not up in time sorts last: text after any date.
  const sorted = finishes.map(date => date ?? '~').sort()
  const shown = (date: string | undefined) => (date === '~' ? undefined : date)
  const quantiles = [0.5, 0.8, 0.95].map((share): FinishQuantile => {
    const [low, high] = quantileRanks(sorted.length, share)
    const date = shown(empiricalQuantile(sorted, share))
    const between = [shown(sorted[low - 1]), shown(sorted[high - 1])] as const
    return date === undefined ? { share, between } : { share, date, between }
  })
  return {
    replays: runs.length,
    finished: finishes.filter(date => date !== undefined).length,
    quantiles,
    lost: meanLost(runs),
    chanceBy: date => {
      const hits = finishes.filter(finish => finish !== undefined && finish <= date).length
      return { chance: hits / runs.length, between: chanceInterval(hits, runs.length) }
    },
    finishes,
    caution: CAUTION,
  }
}

function meanLost(runs: readonly ReplayedRun[]): readonly LostDays[] {
  const causes = [...new Set(runs.flatMap(run => run.lost))]
  return causes
    .map(cause => ({
      cause,
      ...meanWithin(runs.map(({ lost }) => lost.filter(each => each === cause).length)),
    }))
    .map(({ cause, mean, within }) => ({ cause, days: mean, within }))
    .sort((a, b) => b.days - a.days || (a.cause < b.cause ? -1 : 1))
}
