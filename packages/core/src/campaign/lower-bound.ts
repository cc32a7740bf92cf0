import type { Instant, Seconds } from '../quantity/index.js'
import type { Ground, Stand } from './ground.js'
import { nextUsable, TICK, usableUntil } from './hour-table.js'
import { holdsBetween, NEVER, printTimeBetween, type SectionClock } from './section-clock.js'
import type { WorkDay } from './work-day.js'

/** More than all clock tolerances of a campaign together [s], so that the bound never claims too much. */
const SLACK = 1

/** What no plan can get out of a day. */
export interface DayCapacity {
  /** Most print time and planned stops, change-overs taken off: no lift is longer than the longest of the job. */
  readonly printable: Seconds
  /** Planned stops that can be worked off in closed time before and between open stretches: one layer's in each gap. */
  readonly gaps: Seconds
  /** Lifts it takes for that; each lift more costs a change-over of print time. */
  readonly lifts: number
  /** When the crew is ready, and the open stretches from then on. */
  readonly ready: Instant
  readonly runs: readonly (readonly [Instant, Instant])[]
  /** Longest time between set-up and wash-out. */
  readonly span: Seconds
}

/** Capacities of all days with running totals (index i: the days before day i), and the solo finishes known so far. */
export interface Bounds {
  readonly days: readonly DayCapacity[]
  readonly printableBefore: Float64Array
  readonly gapsBefore: Float64Array
  readonly liftsBefore: Float64Array
  readonly solo: Map<number, number>
}

export function prepareBounds(ground: Ground): Bounds {
  const longestLift = Math.max(0, ...ground.sections.map(longestLiftOf))
  const largestHold = Math.max(0, ...ground.sections.map(({ holdAfter }) => Math.max(...holdAfter)))
  const days = ground.days.map(day => dayCapacity(ground, day, longestLift, largestHold))
  const before = (of: (day: DayCapacity) => number) => {
    const sums = new Float64Array(days.length + 1)
    for (const [i, day] of days.entries()) sums[i + 1] = sums[i]! + of(day)
    return sums
  }
  return {
    days,
    printableBefore: before(day => day.printable),
    gapsBefore: before(day => day.gaps),
    liftsBefore: before(day => day.lifts),
    solo: new Map(),
  }
}

/** Print time and planned stops of the longest lift the rule and the lift ends allow anywhere in the section. */
function longestLiftOf(section: SectionClock): Seconds {
  let longest = 0
  for (let below = 0; below < section.layers; below++) {
    const top = Math.min(section.liftTop[below]!, below + section.ruleLayers)
    longest = Math.max(longest, workBetween(section, below, top))
  }
  return longest
}

const workBetween = (section: SectionClock, from: number, to: number): Seconds =>
  printTimeBetween(section, from, to) + holdsBetween(section, from, to)

function dayCapacity(ground: Ground, day: WorkDay, longestLift: Seconds, largestHold: Seconds): DayCapacity {
  const { setUp, washOut, longestShift } = ground.input.crew
  const span = longestShift - setUp - washOut
  const ready = day.opens + setUp
  if (day.off || span <= 0) return { printable: 0, gaps: 0, lifts: 0, ready, runs: [], span: 0 }
  const runs = openRuns(ground, ready, day.closes - washOut)
  // Open time in a sliding span is largest when the span starts with a run or ends with one.
  const starts = runs.flatMap(([from, until]) => [from, until - span])
  const within = (start: number) =>
    runs.reduce((sum, [from, until]) => sum + overlap(from, until, start, start + span), 0)
  const open = Math.max(0, ...starts.map(within))
  const gaps = runs.reduce(
    (sum, [from], i) => sum + Math.min(largestHold, from - (i > 0 ? runs[i - 1]![1] : ready)),
    0,
  )
  return { ...bestCount(ground, open, runs.length, longestLift), gaps, ready, runs, span }
}

/**
 * With k lifts a day prints at most k longest lifts, and at most the open time less the change-overs that cannot hide
 * between stretches. The one rises with k, the other falls: the best k, the larger of equals.
 */
function bestCount(
  { input, sections }: Ground,
  open: Seconds,
  runs: number,
  longestLift: Seconds,
): { readonly printable: Seconds; readonly lifts: number } {
  let best = { printable: 0, lifts: 0 }
  for (let lifts = 1; lifts <= sections.length && open > 0; lifts++) {
    const room = open - Math.max(0, lifts - runs) * input.crew.changeOver
    const printable = Math.min(room, lifts * longestLift)
    if (printable < best.printable) break
    best = { printable, lifts }
  }
  return best
}

const overlap = (from: number, until: number, start: number, end: number): number =>
  Math.max(0, Math.min(until, end) - Math.max(from, start))

function openRuns(ground: Ground, earliest: number, latest: number): readonly (readonly [number, number])[] {
  const runs: (readonly [number, number])[] = []
  for (let at = nextUsable(ground.table, earliest, latest); at !== undefined; ) {
    const until = Math.min(latest, usableUntil(ground.table, at))
    runs.push([at, until])
    at = nextUsable(ground.table, until, latest)
  }
  return runs
}

/**
 * First day (its number) by whose end everything could be up, starting with day `from`; `NEVER` if the hours end first.
 *
 * Two relaxations, the later of which counts:
 * alone: each section as if it had machine and crew to itself, one lift a day, bounded by rule height, lift ends and
 *   the longest open stretch of the day, planned stops included;
 * together: all print time and planned stops left, plus the change-overs no plan can hide, against what the days can
 *   print at most; stops may also be worked off in the gaps between open stretches.
 * Neither looks at standing, resting time or deliveries, which only delay.
 */
export function finishBound(ground: Ground, bounds: Bounds, stand: Stand, from: number): number {
  let latest = from - 1
  let work = 0
  let holds = 0
  let lifts = 0
  for (const [s, section] of ground.sections.entries()) {
    const height = stand.heights[s]!
    if (height >= section.layers) continue
    latest = Math.max(latest, soloFinish(ground, bounds, s, height, from))
    work += printTimeBetween(section, height, section.layers)
    holds += holdsBetween(section, height, section.layers)
    lifts += section.liftsLeft[height]!
  }
  if (work === 0) return latest
  return Math.max(latest, togetherFinish(ground, bounds, from, { work, holds, lifts }, latest))
}

/** What is left to do, all sections together. */
interface Demand {
  readonly work: Seconds
  readonly holds: Seconds
  readonly lifts: number
}

function togetherFinish(
  ground: Ground,
  bounds: Bounds,
  from: number,
  { work, holds, lifts }: Demand,
  notBefore: number,
): number {
  const { changeOver } = ground.input.crew
  for (let day = Math.max(from, notBefore); day < bounds.days.length; day++) {
    const printable = bounds.printableBefore[day + 1]! - bounds.printableBefore[from]!
    const free = bounds.liftsBefore[day + 1]! - bounds.liftsBefore[from]!
    const hidden = Math.min(holds, bounds.gapsBefore[day + 1]! - bounds.gapsBefore[from]!)
    if (work + holds - hidden + Math.max(0, lifts - free) * changeOver <= printable + SLACK) return day
  }
  return NEVER
}

/** First day by whose end section `s`, alone on site, could be up from `height`. */
export function soloFinish(ground: Ground, bounds: Bounds, s: number, height: number, from: number): number {
  const section = ground.sections[s]!
  if (height >= section.layers) return from - 1
  if (from >= bounds.days.length) return NEVER
  const key = (s * (bounds.days.length + 1) + from) * 4096 + height
  const known = bounds.solo.get(key)
  if (known !== undefined) return known
  const isClosed = ground.pins[s]!.closed.has(ground.days[from]!.date)
  const next = isClosed ? height : soloDay(section, height, bounds.days[from]!)
  const finish = soloFinish(ground, bounds, s, next, from + 1)
  bounds.solo.set(key, finish)
  return finish
}

/** Height after one lift in the stretch that holds most of it. Print times differ by layer, so it is looked up, not divided. */
function soloDay(section: SectionClock, height: number, { runs, ready, span }: DayCapacity): number {
  const top = Math.min(section.liftTop[height]!, height + section.ruleLayers)
  const holdBefore = section.holdAfter[height]!
  const room = runs.reduce(
    (most, [from, until]) =>
      Math.max(most, Math.min(span - holdBefore, until - Math.max(from, ready + holdBefore))),
    0,
  )
  const gap = runs.reduce(
    (least, [from], i) => (i > 0 ? Math.min(least, from - runs[i - 1]![1]) : least),
    Number.POSITIVE_INFINITY,
  )
  let reached = height
  let bridged = false
  while (reached < top) {
    // A stop as long as a gap may bridge two stretches.
    bridged ||= reached > height && section.holdAfter[reached]! >= gap
    const takes = printTimeBetween(section, height, reached + 1) + holdsBetween(section, height, reached + 1)
    if (!bridged && takes - holdBefore > room + TICK) break
    reached++
  }
  return reached
}

/** Fewest print days for what is left, whichever days they are. */
export function printDaysBound(ground: Ground, bounds: Bounds, stand: Stand): number {
  const { changeOver } = ground.input.crew
  let work = 0
  let lifts = 0
  let chain = 0
  for (const [s, section] of ground.sections.entries()) {
    const height = stand.heights[s]!
    work += workBetween(section, height, section.layers)
    lifts += section.liftsLeft[height]!
    chain = Math.max(chain, section.liftsLeft[height]!)
  }
  const plain = bounds.days.map(day => day.printable + day.gaps)
  const withChanges = bounds.days.map(day => day.printable + day.gaps + day.lifts * changeOver)
  return Math.max(chain, fewestToReach(work, plain), fewestToReach(work + lifts * changeOver, withChanges))
}

/** How many of the largest amounts make up the target. */
function fewestToReach(target: number, amounts: readonly number[]): number {
  const largest = [...amounts].sort((a, b) => b - a)
  let count = 0
  for (let sum = 0; sum + SLACK < target && count < largest.length; count++) sum += largest[count]!
  return count
}
