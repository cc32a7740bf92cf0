import {
  countedDraws,
  type FinishQuantile,
  type ReplayYear,
  replayRuns,
  riskOf,
} from '@dawnlift/core/campaign'
import {
  type JobLever,
  type JobLeverRow,
  type JobLeverTable,
  type LeverBench,
  type LeverOptions,
  type LeverStage,
  leverBench,
  tryJobLevers,
} from '@dawnlift/core/lever'
import { newPlanCache, sitePhysics } from '@dawnlift/core/plan'
import { assert } from '@dawnlift/core/result'
import { printHours, type WeatherHour } from '@dawnlift/core/weather'
import { type DoubtWishes, doubtSeed, nearDays, type StandingPlan } from './campaign-doubt.js'
import { horizonDays } from './job-weather.js'
import { weatherYears } from './weather-years.js'

/** A row with how sure its finish is, where that was asked. All rows meet the same weather and the same mishaps. */
export interface DoubtedRow extends JobLeverRow {
  readonly sure?: readonly FinishQuantile[]
}

/** The table of levers with the doubt of the plan, of each kind's best setting, and of the best pair and triple. */
export interface DoubtedLevers extends Omit<JobLeverTable, 'asPlanned' | 'rows' | 'pairs' | 'triples'> {
  readonly asPlanned: DoubtedRow
  readonly rows: readonly DoubtedRow[]
  readonly pairs?: DoubtedSets
  readonly triples?: DoubtedSets
  /** Courses of weather met, and where they come from. */
  readonly replays: number
  readonly weather: string
}

export interface DoubtedSets {
  readonly possible: number
  readonly planned: number
  readonly best?: DoubtedRow
}

export type DoubtedStage = LeverStage | 'doubt'

export interface DoubtedOptions extends Omit<LeverOptions, 'progress'> {
  readonly progress?: (stage: DoubtedStage, share: number) => Promise<boolean> | boolean
}

/** Levers pulled, then replayed. Undefined only when `progress` stopped it. */
export async function leversOf(
  standing: StandingPlan,
  wishes: DoubtWishes,
  options: DoubtedOptions,
): Promise<DoubtedLevers | undefined> {
  const { opened, plan, read } = standing
  const ground = { ...plan, hours: opened.hours }
  const bench = leverBench(ground, newPlanCache())
  const table = await tryJobLevers(ground, options, bench)
  if (!table) return undefined
  const met = weatherYears(opened, read, Math.max(1, wishes.replays), doubtSeed)
  const courses = courseBook(met, nearDays(plan))
  const chosen = rowsToDoubt(table)
  const sure = new Map<JobLeverRow, readonly FinishQuantile[]>()
  for (const [index, row] of (wishes.replays > 0 ? chosen : []).entries()) {
    if ((await options.progress?.('doubt', index / chosen.length)) === false) return undefined
    sure.set(row, quantilesOf(bench, row.levers, courses, wishes))
  }
  await options.progress?.('doubt', 1)
  const doubted = (row: JobLeverRow): DoubtedRow => ({
    ...row,
    ...(sure.has(row) ? { sure: sure.get(row)! } : {}),
  })
  const sets = (of: NonNullable<JobLeverTable['pairs']>): DoubtedSets => {
    const { best, ...counts } = of
    return { ...counts, ...(best ? { best: doubted(best) } : {}) }
  }
  return {
    asPlanned: doubted(table.asPlanned),
    rows: table.rows.map(doubted),
    without: table.without,
    ...(table.pairs ? { pairs: sets(table.pairs) } : {}),
    ...(table.triples ? { triples: sets(table.triples) } : {}),
    replays: wishes.replays > 0 ? met.count : 0,
    weather: met.from,
  }
}

/** The plan as it stands, each kind at its best setting, and the best sets; rows come best first. */
function rowsToDoubt({ asPlanned, rows, pairs, triples }: JobLeverTable): readonly JobLeverRow[] {
  const kindOf = (row: JobLeverRow) => row.levers[0]?.kind
  const best = rows.filter((row, i) => rows.findIndex(other => kindOf(other) === kindOf(row)) === i)
  return [asPlanned, ...best, ...[pairs?.best, triples?.best].flatMap(row => row ?? [])]
}

interface CourseBook {
  readonly count: number
  readonly near: (index: number) => readonly WeatherHour[]
  readonly whole: (index: number) => readonly WeatherHour[]
}

/** The beginnings of all courses are kept: every lever meets them again. */
function courseBook(met: ReturnType<typeof weatherYears>, days: number): CourseBook {
  const known = new Map<number, readonly WeatherHour[]>()
  return {
    count: met.count,
    near: index => {
      const hours = known.get(index) ?? met.yearAt(index, days).hours
      known.set(index, hours)
      return hours
    },
    whole: index => met.yearAt(index, horizonDays).hours,
  }
}

function quantilesOf(
  bench: LeverBench,
  levers: readonly JobLever[],
  courses: CourseBook,
  { rates }: DoubtWishes,
): readonly FinishQuantile[] {
  const pulled = bench.pull(levers)
  assert(pulled, 'levers that stand in the table can be pulled')
  const { job, input } = pulled
  const met = (weather: readonly WeatherHour[], label: string): ReplayYear => {
    const hours = printHours(job, weather)
    return { label, hours, longestRest: sitePhysics(job, [], [], hours).longestRest }
  }
  const runs = Array.from({ length: courses.count }, (_, index) => {
    const label = String(index + 1)
    const year = { ...met(courses.near(index), label), whole: () => met(courses.whole(index), label) }
    return replayRuns(input, [year], rates, countedDraws(doubtSeed), { first: index })
  })
  return riskOf(runs.flat()).quantiles
}
