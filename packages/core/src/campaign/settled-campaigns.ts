import { calmWeights, compareWeights, type Weights } from './aim.js'
import type { Ground, Stand } from './ground.js'
import type { Bounds } from './lower-bound.js'
import { putToPhysics } from './put-to-physics.js'
import { NEVER } from './section-clock.js'
import { comparePleasant } from './trail.js'
import { type Found, type KnownOptions, searchWeighed } from './wide-search.js'

/** `isProven`: no campaign is up sooner. */
export interface Shortest extends Found {
  readonly isProven: boolean
}

/** Working days a campaign may take longer than the soonest for the sake of another aim. */
const SLACK_DAYS = [0, 1, 2, 4, 8]

/**
 * Searches made, by the trails they keep. Few lifts and none needlessly low are a good guide to what weighs little, even where
 * neither counts by itself: whatever counts, the calm ones are looked at too.
 */
const searchesFor = (weights: Weights): readonly { readonly trails: number; readonly by: Weights }[] => [
  ...(weights === calmWeights ? [] : [{ trails: 24, by: weights }]),
  { trails: 12, by: calmWeights },
  { trails: 24, by: calmWeights },
]

/** What the physics says is searched on once more, so often at most. */
const ROUNDS = 2

/**
 * For every day by which the walls may be up, from the soonest on, the least heavy campaign found until then, lifts asked of
 * the physics. The soonest is one of those compared, so none weighs more than it, and waiting longer never more. What is learned
 * of standing on the way stays here: the same soonest campaign leads to the same ones, whatever else is looked for.
 */
export function settledCampaigns(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  soonest: Shortest,
  weights: Weights,
  progress: (share: number) => void = () => undefined,
): readonly Shortest[] {
  const apart = withOwnSamples(ground)
  let best = soonest
  const all = slackDays(ground, soonest.finish)
  const options: KnownOptions = new Map()
  return all.map((by, i) => {
    progress(i / all.length)
    for (const found of settledBy(apart, bounds, start, by, weights, options)) {
      const isProven = soonest.isProven && found.finish <= soonest.finish
      if (isLighter(found, best, weights)) best = { ...found, isProven }
    }
    return best
  })
}

/** Of two that weigh the same the one up sooner. */
const isLighter = (a: Found, b: Found, weights: Weights): boolean => {
  const lighter = compareWeights(a.trail, b.trail, weights)
  return lighter < 0 || (lighter === 0 && a.finish <= b.finish && comparePleasant(a.trail, b.trail) < 0)
}

const withOwnSamples = (ground: Ground): Ground => ({
  ...ground,
  book: { ...ground.book, samples: new Map(ground.book.samples) },
})

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
    const found = searchesFor(weights).flatMap(({ trails, by: guide }) => {
      const breadth = { trails, firsts: 8, wishes: 3 }
      return searchWeighed(sampled, bounds, start, breadth, options, by, guide) ?? []
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
