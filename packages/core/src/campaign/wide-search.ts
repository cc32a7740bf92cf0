import { calmWeights, compareWeighed, type Weights, weightOf } from './aim.js'
import { type Breadth, dayOptions } from './day-options.js'
import { CRUMB, type DayPlan } from './day-plan.js'
import { type Ground, isUp, type Stand } from './ground.js'
import { type Bounds, finishBound } from './lower-bound.js'
import { NEVER, printTimeBetween } from './section-clock.js'
import { comparePleasant, extendTrail, passDay, standKey, startTrail, type Trail } from './trail.js'

/** What a search found: the trail, and the number of the day it is up (`NEVER` if the hours end first). */
export interface Found {
  readonly trail: Trail
  readonly finish: number
}

/** Fillings of days already worked out, by the day and what stands that morning. */
export type KnownOptions = Map<string, readonly DayPlan[]>

interface Ranked {
  readonly trail: Trail
  readonly bound: number
  readonly left: number
  /** Needless low lifts so far, and those that what stands will ask for. */
  readonly crumbs: number
  /** Hours on site the whole campaign is likely to take. */
  readonly likely: number
}

/**
 * Goes day by day and keeps the few most promising trails: those that by the proven bound could finish soonest,
 * then those with least left to do. Deterministic; nearly linear in the number of lifts at a given breadth.
 *
 * With a day to finish by, half of the trails kept are the pleasantest that can still be up by then; undefined if none is.
 */
export function searchWide(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  breadth: Breadth,
  known: KnownOptions = new Map(),
): Found {
  return searchBy(ground, bounds, start, breadth, known, undefined)!
}

/** The pleasantest campaign up by a day, if one is found; see `searchWide`. */
export const searchCalm = (
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  breadth: Breadth,
  known: KnownOptions,
  by: number,
): Found | undefined => searchBy(ground, bounds, start, breadth, known, { by, weights: undefined })

/** The campaign that weighs least among those up by a day, if one is found. */
export const searchWeighed = (
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  breadth: Breadth,
  known: KnownOptions,
  by: number,
  weights: Weights,
): Found | undefined => searchBy(ground, bounds, start, breadth, known, { by, weights })

/** By when the walls are to be up, and what counts then; without weights the first day that is reached counts. */
interface Goal {
  readonly by: number
  readonly weights: Weights | undefined
}

const comparedBy = (weights: Weights | undefined) => (a: Trail, b: Trail) =>
  weights ? compareWeighed(a, b, weights) : comparePleasant(a, b)

function searchBy(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  breadth: Breadth,
  known: KnownOptions,
  goal: Goal | undefined,
): Found | undefined {
  let trails: readonly Trail[] = [startTrail(start)]
  if (isUp(ground, start)) return { trail: trails[0]!, finish: -1 }
  const weights = goal?.weights
  const compare = comparedBy(weights)
  const last = Math.min(ground.days.length - 1, goal?.by ?? Number.POSITIVE_INFINITY)
  let best: Found | undefined
  for (let day = 0; day <= last && trails.length > 0; day++) {
    trails = nextTrails(ground, bounds, start, trails, day, breadth, known, goal)
    const done = trails.filter(trail => isUp(ground, trail.stand)).sort(compare)[0]
    if (done && !weights) return { trail: done, finish: day }
    if (done && (!best || compare(done, best.trail) < 0)) best = { trail: done, finish: day }
    if (done) trails = trails.filter(trail => !isUp(ground, trail.stand))
  }
  if (goal) return best
  const left = (trail: Trail) => leftToDo(ground, trail.stand)
  return { trail: [...trails].sort((a, b) => left(a) - left(b))[0]!, finish: NEVER }
}

function nextTrails(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  trails: readonly Trail[],
  day: number,
  breadth: Breadth,
  known: KnownOptions,
  goal: Goal | undefined,
): readonly Trail[] {
  const { date, off } = ground.days[day]!
  if (off) return trails.map(trail => passDay(ground, trail, date))
  const tomorrow = ground.days[day + 1]?.opens ?? Number.POSITIVE_INFINITY
  const compare = comparedBy(goal?.weights)
  const seen = new Map<string, Trail>()
  for (const trail of trails) {
    const options = keptOptions(ground, bounds, trail.stand, start, day, breadth, known)
    const after = options.map(plan => extendTrail(ground, trail, plan))
    // A day with few open hours may cost more than it brings.
    if (after.length === 0 || goal?.weights) after.push(passDay(ground, trail, date))
    for (const next of after) {
      const key = standKey(ground, next.stand, tomorrow)
      const other = seen.get(key)
      if (!other || compare(next, other) < 0) seen.set(key, next)
    }
  }
  const all = [...seen.values()]
  if (all.length === 1 && !goal) return all
  const ranked = all.map(trail =>
    rank(ground, bounds, trail, day + 1, goal ? (goal.weights ?? calmWeights) : noWeights),
  )
  return goal ? calmest(ranked, breadth.trails, goal.by) : soonest(ranked, breadth.trails)
}

function keptOptions(
  ground: Ground,
  bounds: Bounds,
  stand: Stand,
  start: Stand,
  day: number,
  breadth: Breadth,
  known: KnownOptions,
): readonly DayPlan[] {
  const key = `${day}|${breadth.firsts}|${breadth.wishes}|${standKey(ground, stand, ground.days[day]!.opens)}`
  const before = known.get(key)
  if (before) return before
  const made = dayOptions(ground, bounds, stand, start, day, breadth)
  known.set(key, made)
  return made
}

function soonest(ranked: readonly Ranked[], count: number): readonly Trail[] {
  const sorted = [...ranked].sort(
    (a, b) =>
      a.trail.missed - b.trail.missed ||
      a.bound - b.bound ||
      a.left - b.left ||
      comparePleasant(a.trail, b.trail),
  )
  return sorted.slice(0, count).map(one => one.trail)
}

/** Half of them by what is left, so that some of them get there; half by what the whole is likely to take. */
function calmest(ranked: readonly Ranked[], count: number, by: number): readonly Trail[] {
  const hopeful = ranked.filter(one => one.bound <= by)
  const pleasant = [...hopeful].sort(
    (a, b) =>
      a.trail.missed - b.trail.missed ||
      a.crumbs - b.crumbs ||
      a.likely - b.likely ||
      comparePleasant(a.trail, b.trail),
  )
  const kept = new Set([
    ...soonest(hopeful, Math.ceil(count / 2)),
    ...pleasant.slice(0, count).map(one => one.trail),
  ])
  return [...kept].slice(0, count)
}

const noWeights: Weights = { perDay: 0, perLift: 0, countsCrumbs: true }

function rank(ground: Ground, bounds: Bounds, trail: Trail, from: number, weights: Weights): Ranked {
  const left = leftToDo(ground, trail.stand)
  const { setUp, washOut } = ground.input.crew
  const days = left > 0 ? daysFor(bounds, left, from) : 0
  return {
    trail,
    bound: finishBound(ground, bounds, trail.stand, from),
    left,
    crumbs: weights.countsCrumbs ? trail.crumbs + crumbsAhead(ground, trail.stand) : 0,
    likely:
      weightOf(trail, weights) +
      left +
      days * (setUp + washOut + weights.perDay) +
      liftsLeft(ground, trail.stand) * weights.perLift,
  }
}

const liftsLeft = ({ sections }: Ground, { heights }: Stand): number =>
  sections.reduce((sum, section, s) => sum + section.liftsLeft[heights[s]!]!, 0)

/** Sections with a layer or two left below a lift end. */
function crumbsAhead({ sections }: Ground, { heights }: Stand): number {
  return sections.filter(({ liftTop, stretch, layers }, s) => {
    const height = heights[s]!
    return height < layers && liftTop[height]! - height <= CRUMB && stretch[height]! > CRUMB
  }).length
}

/** Days like the next ones that so much work takes, change-overs counted; parts of days count as such. */
function daysFor({ worths }: Bounds, work: number, from: number): number {
  const { ofDay } = worths.at(-1)!
  let left = work
  let count = 0
  for (let day = from; day < ofDay.length && left > 0; day++) {
    const worth = ofDay[day]!
    if (worth <= 0) continue
    count += Math.min(1, left / worth)
    left -= worth
  }
  return count
}

/** Print time left plus a change-over for every lift it takes at least. */
function leftToDo(ground: Ground, stand: Stand): number {
  const { changeOver } = ground.input.crew
  return ground.sections.reduce((sum, section, s) => {
    const height = stand.heights[s]!
    return sum + printTimeBetween(section, height, section.layers) + section.liftsLeft[height]! * changeOver
  }, 0)
}
