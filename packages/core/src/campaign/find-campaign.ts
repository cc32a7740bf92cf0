import { weightsOf } from './aim.js'
import type { Breadth } from './day-options.js'
import { searchExact } from './exact-search.js'
import { type Ground, type Stand, standAtStart } from './ground.js'
import { type Bounds, finishBound, prepareBounds } from './lower-bound.js'
import { confirmTrail, putToPhysics } from './put-to-physics.js'
import { NEVER } from './section-clock.js'
import { type Shortest, settledCampaigns } from './settled-campaigns.js'
import { comparePleasant } from './trail.js'
import { type Found, type KnownOptions, searchCalm, searchWide } from './wide-search.js'

/** `quick` serves replays, `brisk` levers, `full` the plan the crew gets. */
export type Effort = 'quick' | 'brisk' | 'full'

/** After so many rounds of asking the physics a campaign is printed as it then stands. */
const ROUNDS = 4

/**
 * The campaign for the aim of the input that can be found with this effort: the shortest, or for another aim the least heavy
 * one, the shortest among those compared.
 */
export function findCampaign(ground: Ground, bounds: Bounds, start: Stand, effort: Effort): Shortest {
  const soonest = findSoonest(ground, bounds, start, effort)
  const { aim } = ground.input
  if (!aim || aim === 'soonest' || effort === 'quick') return soonest
  return settledCampaigns(ground, bounds, start, soonest, weightsOf(ground.input, aim)).at(-1) ?? soonest
}

/**
 * The shortest campaign that can be found with this effort.
 *
 * The search runs on sampled standing; what it finds is put to the physics lift by lift. Every answer that differs is
 * entered in the book and the search runs again; in the end each lift has been asked for exactly as it is printed.
 */
export function findSoonest(ground: Ground, bounds: Bounds, start: Stand, effort: Effort): Shortest {
  const least = finishBound(ground, bounds, start, 0)
  let best: Found | undefined
  for (let round = 0; round < ROUNDS; round++) {
    const found = searchSampled(ground, bounds, start, effort, least)
    const { asked, learned } = putToPhysics(ground, bounds, start, found)
    if (!best || isBetter(asked, best)) best = asked
    // An answer that cost neither day nor calm is not worth another search.
    const isWorse = best.finish > found.finish || best.trail.crumbs > found.trail.crumbs
    if (learned === 0 || !isWorse || effort === 'quick') break
  }
  const shortest = best!
  if ((shortest.finish <= least && shortest.trail.missed === 0) || effort !== 'full' || !isSmall(ground)) {
    return { ...shortest, isProven: shortest.finish <= least }
  }
  const sampled: Ground = { ...ground, standing: 'sampled' }
  // A campaign that breaks pins is no measure of one that keeps them.
  const beat = shortest.trail.missed > 0 ? ground.days.length : shortest.finish
  const exact = searchExact(sampled, bounds, start, beat, { left: 60_000 })
  const confirmed = exact.found && confirmTrail(ground, exact.found.trail)
  if (exact.found && confirmed)
    return { trail: confirmed, finish: exact.found.finish, isProven: exact.proven }
  return { ...shortest, isProven: exact.proven && !exact.found }
}

/** A campaign on sampled standing alone: good for comparing, not for printing. */
export function searchSampled(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  effort: Effort,
  least: number = finishBound(ground, bounds, start, 0),
): Found {
  const sampled: Ground = { ...ground, standing: 'sampled' }
  const known: KnownOptions = new Map()
  let best = searchWide(sampled, bounds, start, { trails: 1, firsts: 1, wishes: 1 })
  for (const breadth of breadthsFor(ground, effort)) {
    const wider = searchWide(sampled, bounds, start, breadth, known)
    if (isBetter(wider, best)) best = wider
    if (best.finish <= least) break
  }
  if (best.finish === NEVER) return best
  // Options of a day are shared, so that another breadth costs little; each keeps other trails.
  for (const calm of calmBreadths(ground, effort)) {
    const calmer = searchCalm(sampled, bounds, start, calm, known, best.finish)
    if (calmer && isBetter(calmer, best)) best = calmer
  }
  return best
}

/** Pins kept, then the day it is up, then what is pleasant. */
const isBetter = (a: Found, b: Found): boolean =>
  a.trail.missed < b.trail.missed ||
  (a.trail.missed === b.trail.missed &&
    (a.finish < b.finish || (a.finish === b.finish && comparePleasant(a.trail, b.trail) < 0)))

/** Wide for a house, narrower for a street of houses, so that time grows little faster than the work. */
function breadthsFor(ground: Ground, effort: Effort): readonly Breadth[] {
  const lifts = leastLifts(ground)
  if (effort === 'quick') return []
  if (lifts > 150) return [{ trails: 3, firsts: 2, wishes: 3 }]
  if (lifts > 60) return [{ trails: 6, firsts: 8, wishes: 3 }]
  if (effort === 'brisk') return [{ trails: 6, firsts: 6, wishes: 3 }]
  return [{ trails: 10, firsts: 8, wishes: 3 }]
}

/** Levers and replays are told by their dates alone. */
function calmBreadths(ground: Ground, effort: Effort): readonly Breadth[] {
  const lifts = leastLifts(ground)
  if (effort !== 'full' || lifts > 150) return []
  const trails = lifts > 60 ? [8] : [12, 24, 16]
  return trails.map(count => ({ trails: count, firsts: 8, wishes: 3 }))
}

/**
 * The date a campaign is up on sampled standing by the plain rule, most urgent section first and as tall as it goes: quick
 * enough to compare a dozen levers. Undefined if it does not get up.
 */
export function plainFinish(ground: Ground): string | undefined {
  const { finish } = searchSampled(ground, prepareBounds(ground), standAtStart(ground), 'quick')
  return finish === NEVER ? undefined : ground.days[finish]?.date
}

const leastLifts = (ground: Ground): number =>
  ground.sections.reduce((sum, one) => sum + Math.min(one.liftsLeft[0]!, one.layers), 0)

/** Small enough to try everything. */
const isSmall = (ground: Ground): boolean =>
  ground.sections.length <= 4 && ground.sections.reduce((sum, section) => sum + section.layers, 0) <= 80
