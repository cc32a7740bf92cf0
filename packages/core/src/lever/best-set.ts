import type { JobLever, JobLeverKind } from './job-lever.js'
import type { LeverBench } from './lever-bench.js'
import { compareLeverRows, type JobLeverRow, type LeverPrices, leastCost } from './lever-row.js'

/** The best of all sets of so many levers, and what was done to know it. */
export interface LeverSets {
  /** Sets of levers that go together. */
  readonly possible: number
  /** Of these really planned; the others could not be better by their bound, or do not apply. */
  readonly planned: number
  readonly best?: JobLeverRow
}

export interface SetSearch {
  readonly bench: LeverBench
  readonly prices: LeverPrices
  readonly planned: (levers: readonly JobLever[]) => JobLeverRow | undefined
}

/** Levers that say different things about one matter. */
const contrary: readonly (readonly [JobLeverKind, JobLeverKind])[] = [
  ['earlier-start', 'night-start'],
  ['longer-shift', 'second-crew'],
  ['faster-nozzle', 'slower-pace'],
]

/**
 * The best set of `size` levers, proven among all sets of these levers: the most promising by their bound are planned first, and
 * the search ends when no bound left is sooner, or as soon and cheaper, than the best one planned.
 */
export async function bestSets(
  search: SetSearch,
  levers: readonly JobLever[],
  size: number,
  goOn: (share: number) => Promise<boolean>,
): Promise<LeverSets | 'stopped'> {
  const sets = combinations(levers, size).filter(goTogether)
  const bounded: BoundedSet[] = []
  for (const [index, set] of sets.entries()) {
    if (!(await goOn((0.4 * index) / sets.length))) return 'stopped'
    const bound = boundOf(search, set)
    if (bound) bounded.push(bound)
  }
  bounded.sort(compareBounds)
  let best: JobLeverRow | undefined
  let planned = 0
  for (const [index, bound] of bounded.entries()) {
    if (!(await goOn(0.4 + (0.6 * index) / bounded.length))) return 'stopped'
    if (cannotBeat(bound, best)) continue
    const row = search.planned(bound.set)
    planned++
    if (row && (!best || compareLeverRows(row, best) < 0)) best = row
  }
  return { possible: sets.length, planned, ...(best ? { best } : {}) }
}

interface BoundedSet {
  readonly set: readonly JobLever[]
  /** Earliest finish; empty where the known hours do not hold one. */
  readonly date: string
  readonly cost: number
}

function boundOf({ bench, prices }: SetSearch, set: readonly JobLever[]): BoundedSet | undefined {
  const pulled = bench.pull(set)
  if (!pulled) return undefined
  const least = bench.least(pulled)
  return { set, date: least.date ?? '', cost: leastCost(pulled, least, prices) }
}

/** Sets without a date come last. */
const compareBounds = (a: BoundedSet, b: BoundedSet): number =>
  Number(a.date === '') - Number(b.date === '') ||
  (a.date < b.date ? -1 : a.date > b.date ? 1 : 0) ||
  a.cost - b.cost

function cannotBeat(bound: BoundedSet, best: JobLeverRow | undefined): boolean {
  if (!best?.finished) return false
  if (bound.date === '' || bound.date > best.finishDate) return true
  return bound.date === best.finishDate && bound.cost >= best.cost
}

const goTogether = (set: readonly JobLever[]): boolean =>
  !contrary.some(pair => pair.every(kind => set.some(lever => lever.kind === kind)))

function combinations<T>(items: readonly T[], size: number): readonly (readonly T[])[] {
  if (size === 0) return [[]]
  return items.flatMap((item, i) => combinations(items.slice(i + 1), size - 1).map(rest => [item, ...rest]))
}
