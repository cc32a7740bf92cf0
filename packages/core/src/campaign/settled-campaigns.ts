import { compareWeighed, type Weights } from './aim.js'
import type { Ground, Stand } from './ground.js'
import type { Bounds } from './lower-bound.js'
import { putToPhysics } from './put-to-physics.js'
import { NEVER } from './section-clock.js'
import { type Found, type KnownOptions, searchWeighed } from './wide-search.js'

/** `isProven`: no campaign is up sooner. */
export interface Shortest extends Found {
  readonly isProven: boolean
}

/** Working days a campaign may take longer than the soonest for the sake of another aim. */
const SLACK_DAYS = [0, 1, 2, 4, 8]

/** Searches of these many trails are made; each keeps other ones. */
const TRAILS = [12, 24]

/** What the physics says is searched on once more, so often at most. */
const ROUNDS = 2

/**
 * For every day by which the walls may be up, from the soonest on, the least heavy campaign found until then, lifts asked of
 * the physics. Those known before, the soonest first, are compared with: none weighs more than any of them that is up by then,
 * and waiting longer never more.
 */
export function settledCampaigns(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  known: readonly [Shortest, ...(readonly Shortest[])],
  weights: Weights,
  progress: (share: number) => void = () => undefined,
): readonly Shortest[] {
  const [soonest] = known
  let best = soonest
  const all = slackDays(ground, soonest.finish)
  const options: KnownOptions = new Map()
  return all.map((by, i) => {
    progress(i / all.length)
    const inTime = known.filter(one => one.finish <= by)
    for (const found of [...inTime, ...settledBy(ground, bounds, start, by, weights, options)]) {
      const isProven = soonest.isProven && found.finish <= soonest.finish
      if (compareWeighed(found.trail, best.trail, weights) < 0) best = { ...found, isProven }
    }
    return best
  })
}

/** Campaigns looked for with a day to be up by, as they really stand. What is learned of standing counts in the next round. */
function settledBy(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  by: number,
  weights: Weights,
  options: KnownOptions,
): readonly Found[] {
  const sampled: Ground = { ...ground, standing: 'sampled' }
  const stood: Found[] = []
  for (let round = 0; round < ROUNDS; round++) {
    const found = TRAILS.flatMap(trails => {
      const breadth = { trails, firsts: 8, wishes: 3 }
      return searchWeighed(sampled, bounds, start, breadth, options, by, weights) ?? []
    })
    const asked = found.map(one => putToPhysics(ground, bounds, start, one))
    stood.push(...asked.map(one => one.asked).filter(one => one.finish !== NEVER))
    if (asked.every(one => one.learned === 0)) break
    options.clear()
  }
  return stood
}

/** The days by which campaigns of another aim are looked for. */
function slackDays(ground: Ground, finish: number): readonly number[] {
  if (finish === NEVER) return []
  const worked = ground.days.flatMap((day, i) => (i > finish && !day.off ? [i] : []))
  return SLACK_DAYS.flatMap(slack => (slack === 0 ? [finish] : (worked[slack - 1] ?? [])))
}
