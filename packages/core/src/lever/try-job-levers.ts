import { calendarDays } from '../campaign/index.js'
import { assert } from '../result/index.js'
import { bestSets, type LeverSets } from './best-set.js'
import { isJobLeverKind, type JobLever, type JobLeverKind, jobLeverKinds } from './job-lever.js'
import { jobLeverSettings } from './job-lever-settings.js'
import { type LeverBench, type LeverGround, leverBench } from './lever-bench.js'
import { compareLeverRows, type JobLeverRow, type LeverPrices, leverRow } from './lever-row.js'

export type LeverStage = 'levers' | 'pairs' | 'triples'

/** What each stage is called while somebody waits for it. */
export const leverStageWords: Readonly<Record<LeverStage, string>> = {
  levers: 'pulling levers',
  pairs: 'pulling them in pairs',
  triples: 'pulling them in triples',
}

export interface LeverOptions {
  readonly prices?: LeverPrices
  /** Largest sets of levers that are tried. */
  readonly most?: 1 | 2 | 3
  /** Levers left out, such as a second crew where there is none to be had. */
  readonly without?: readonly JobLeverKind[]
  /** Called before each set is planned; answering `false` stops. */
  readonly progress?: (stage: LeverStage, share: number) => Promise<boolean> | boolean
  /** Hears of each row as soon as it is planned, the plan as it stands first; sets of levers only in the table. */
  readonly hear?: (row: JobLeverRow) => void
}

export interface JobLeverTable {
  readonly asPlanned: JobLeverRow
  /** One lever each, soonest finish first, then cheapest. */
  readonly rows: readonly JobLeverRow[]
  readonly pairs?: LeverSets
  readonly triples?: LeverSets
  /** Levers that do not apply to this job, or have no setting whose walls can be built. */
  readonly without: readonly JobLeverKind[]
}

/**
 * Every lever pulled by itself and the whole job planned anew, from sections and beads on where the lever reaches so far;
 * then each at its best setting in pairs and in triples. Undefined only when `progress` stopped it.
 */
export async function tryJobLevers(
  ground: LeverGround,
  options: LeverOptions = {},
  bench: LeverBench = leverBench(ground),
): Promise<JobLeverTable | undefined> {
  const goOn = async (stage: LeverStage, share: number) => (await options.progress?.(stage, share)) !== false
  const planned = rowMaker(bench, options.prices ?? {})
  const asPlanned = planned([])
  assert(asPlanned, 'the plan as it stands can be planned')
  options.hear?.(asPlanned)
  const levers = leversOf(ground, options.without ?? [])
  const rows: JobLeverRow[] = []
  for (const [index, lever] of levers.entries()) {
    if (!(await goOn('levers', index / levers.length))) return undefined
    const row = rowOf(planned, [lever], asPlanned)
    if (!row) continue
    rows.push(row)
    options.hear?.(row)
  }
  rows.sort(compareLeverRows)
  const table = {
    asPlanned,
    rows,
    without: jobLeverKinds.filter(kind => !rows.some(row => row.levers[0]!.kind === kind)),
  }
  const best = bestSettings(rows)
  const search = {
    bench,
    prices: options.prices ?? {},
    planned: (set: readonly JobLever[]) => rowOf(planned, set, asPlanned),
  }
  const pairs =
    (options.most ?? 3) < 2 ? undefined : await bestSets(search, best, 2, share => goOn('pairs', share))
  if (pairs === 'stopped') return undefined
  const triples =
    (options.most ?? 3) < 3 ? undefined : await bestSets(search, best, 3, share => goOn('triples', share))
  if (triples === 'stopped') return undefined
  await goOn('triples', 1)
  return { ...table, ...(pairs ? { pairs } : {}), ...(triples ? { triples } : {}) }
}

type Planned = (levers: readonly JobLever[]) => JobLeverRow | undefined

function rowMaker(bench: LeverBench, prices: LeverPrices): Planned {
  return levers => {
    const pulled = bench.pull(levers)
    return pulled && { ...leverRow(pulled, bench.schedule(pulled), prices), costMore: 0 }
  }
}

function rowOf(
  planned: Planned,
  levers: readonly JobLever[],
  asPlanned: JobLeverRow,
): JobLeverRow | undefined {
  const row = planned(levers)
  return row && compared(row, asPlanned)
}

const compared = (row: JobLeverRow, asPlanned: JobLeverRow): JobLeverRow => ({
  ...row,
  costMore: row.cost - asPlanned.cost,
  ...(row.finished && asPlanned.finished
    ? { daysGained: calendarDays(row.finishDate, asPlanned.finishDate) }
    : {}),
})

function leversOf(
  { job, hours, sections }: LeverGround,
  without: readonly JobLeverKind[],
): readonly JobLever[] {
  const scene = { job, hours, sections: sections.length }
  return jobLeverKinds.filter(kind => !without.includes(kind)).flatMap(kind => jobLeverSettings(scene, kind))
}

/** Each kind once, at the setting that finishes soonest; rows come sorted. */
function bestSettings(rows: readonly JobLeverRow[]): readonly JobLever[] {
  const best = new Map<JobLeverKind, JobLever>()
  for (const [lever] of rows.map(row => row.levers)) {
    if (lever && isJobLeverKind(lever.kind) && !best.has(lever.kind)) best.set(lever.kind, lever)
  }
  return [...best.values()]
}
