import type { Seconds } from '../quantity/index.js'
import type { Ground, Stand } from './ground.js'
import { nextUsable, TICK, usableUntil } from './hour-table.js'
import { NEVER, printTimeBetween, type SectionClock } from './section-clock.js'
import type { WorkDay } from './work-day.js'

/** More than all clock tolerances of a campaign together [s], so that the bound never claims too much. */
const SLACK = 1

/** What no plan can get out of a day. */
export interface DayCapacity {
  /** Most print time, change-overs taken off: no lift is longer than the longest of the job. */
  readonly printable: Seconds
  /** Lifts it takes for that; each lift more costs a change-over of print time. */
  readonly lifts: number
  /** Longest open stretch a shift can hold. */
  readonly longest: Seconds
}

/** Capacities of all days with running totals (index i: the days before day i), and the solo finishes known so far. */
export interface Bounds {
  readonly days: readonly DayCapacity[]
  readonly printableBefore: Float64Array
  readonly liftsBefore: Float64Array
  readonly solo: Map<number, number>
}

export function prepareBounds(ground: Ground): Bounds {
  const longestLift = Math.max(0, ...ground.sections.map(longestLiftOf))
  const days = ground.days.map(day => dayCapacity(ground, day, longestLift))
  const printableBefore = new Float64Array(days.length + 1)
  const liftsBefore = new Float64Array(days.length + 1)
  for (const [i, day] of days.entries()) {
    printableBefore[i + 1] = printableBefore[i]! + day.printable
    liftsBefore[i + 1] = liftsBefore[i]! + day.lifts
  }
  return { days, printableBefore, liftsBefore, solo: new Map() }
}

/** Print time of the longest lift the rule and the lift ends allow anywhere in the section. */
function longestLiftOf(section: SectionClock): Seconds {
  let longest = 0
  for (let below = 0; below < section.layers; below++) {
    const top = Math.min(section.liftTop[below]!, below + section.ruleLayers)
    longest = Math.max(longest, printTimeBetween(section, below, top))
  }
  return longest
}

function dayCapacity(ground: Ground, day: WorkDay, longestLift: Seconds): DayCapacity {
  const { setUp, washOut, longestShift } = ground.input.crew
  const span = longestShift - setUp - washOut
  if (day.off || span <= 0) return { printable: 0, lifts: 0, longest: 0 }
  const runs = openRuns(ground, day.opens + setUp, day.closes - washOut)
  // Open time in a sliding span is largest when the span starts with a run or ends with one.
  const starts = runs.flatMap(([from, until]) => [from, until - span])
  const within = (start: number) =>
    runs.reduce((sum, [from, until]) => sum + overlap(from, until, start, start + span), 0)
  const open = Math.max(0, ...starts.map(within))
  const longest = Math.max(0, ...runs.map(([from, until]) => Math.min(span, until - from)))
  return { ...bestCount(ground, open, runs.length, longestLift), longest }
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
 *   the longest open stretch of the day;
 * together: all print time left, plus the change-overs no plan can hide, against what the days can print at most.
 * Neither looks at standing, resting time, holds or deliveries, which only delay.
 */
export function finishBound(ground: Ground, bounds: Bounds, stand: Stand, from: number): number {
  let latest = from - 1
  let work = 0
  let lifts = 0
  for (const [s, section] of ground.sections.entries()) {
    const height = stand.heights[s]!
    if (height >= section.layers) continue
    latest = Math.max(latest, soloFinish(ground, bounds, s, height, from))
    work += printTimeBetween(section, height, section.layers)
    lifts += section.liftsLeft[height]!
  }
  return work > 0 ? Math.max(latest, togetherFinish(ground, bounds, from, work, lifts, latest)) : latest
}

function togetherFinish(
  ground: Ground,
  bounds: Bounds,
  from: number,
  work: Seconds,
  lifts: number,
  notBefore: number,
): number {
  const { changeOver } = ground.input.crew
  for (let day = Math.max(from, notBefore); day < bounds.days.length; day++) {
    const printable = bounds.printableBefore[day + 1]! - bounds.printableBefore[from]!
    const free = bounds.liftsBefore[day + 1]! - bounds.liftsBefore[from]!
    if (work + Math.max(0, lifts - free) * changeOver <= printable + SLACK) return day
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
  const next = soloDay(section, height, bounds.days[from]!.longest)
  const finish = soloFinish(ground, bounds, s, next, from + 1)
  bounds.solo.set(key, finish)
  return finish
}

/** Height after one lift in the longest open stretch. Print times differ by layer, so it is looked up, not divided. */
function soloDay(section: SectionClock, height: number, longest: Seconds): number {
  const top = Math.min(section.liftTop[height]!, height + section.ruleLayers)
  let reached = height
  while (reached < top && printTimeBetween(section, height, reached + 1) <= longest + TICK) reached++
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
    work += printTimeBetween(section, height, section.layers)
    lifts += section.liftsLeft[height]!
    chain = Math.max(chain, section.liftsLeft[height]!)
  }
  const plain = bounds.days.map(day => day.printable)
  const withChanges = bounds.days.map(day => day.printable + day.lifts * changeOver)
  return Math.max(chain, fewestToReach(work, plain), fewestToReach(work + lifts * changeOver, withChanges))
}

/** How many of the largest amounts make up the target. */
function fewestToReach(target: number, amounts: readonly number[]): number {
  const largest = [...amounts].sort((a, b) => b - a)
  let count = 0
  for (let sum = 0; sum + SLACK < target && count < largest.length; count++) sum += largest[count]!
  return count
}
