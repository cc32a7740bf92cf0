import { type Breadth, dayOptions } from './day-options.js'
import { type Ground, isUp, type Stand } from './ground.js'
import { type Bounds, finishBound } from './lower-bound.js'
import { NEVER, printTimeBetween } from './section-clock.js'
import { comparePleasant, extendTrail, standKey, startTrail, type Trail } from './trail.js'

/** What a search found: the trail, and the number of the day it is up (`NEVER` if the hours end first). */
export interface Found {
  readonly trail: Trail
  readonly finish: number
}

interface Ranked {
  readonly trail: Trail
  readonly bound: number
  readonly left: number
}

/**
 * Goes day by day and keeps the few most promising trails: those that by the proven bound could finish soonest,
 * then those with least left to do. Deterministic; nearly linear in the number of lifts at a given breadth.
 */
export function searchWide(ground: Ground, bounds: Bounds, start: Stand, breadth: Breadth): Found {
  let trails: readonly Trail[] = [startTrail(start)]
  for (let day = 0; day < ground.days.length; day++) {
    const done = trails.filter(trail => isUp(ground, trail.stand))
    if (done.length > 0) return { trail: [...done].sort(comparePleasant)[0]!, finish: day - 1 }
    if (ground.days[day]!.off) continue
    trails = nextTrails(ground, bounds, start, trails, day, breadth)
  }
  const best = [...trails].sort((a, b) => leftToDo(ground, a.stand) - leftToDo(ground, b.stand))[0]!
  const finish = isUp(ground, best.stand) ? ground.days.length - 1 : NEVER
  return { trail: best, finish }
}

function nextTrails(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  trails: readonly Trail[],
  day: number,
  breadth: Breadth,
): readonly Trail[] {
  const tomorrow = ground.days[day + 1]?.opens ?? Number.POSITIVE_INFINITY
  const seen = new Map<string, Trail>()
  for (const trail of trails) {
    const options = dayOptions(ground, bounds, trail.stand, start, day, breadth)
    const after = options.length > 0 ? options.map(plan => extendTrail(ground, trail, plan)) : [trail]
    for (const next of after) {
      const key = standKey(next.stand, tomorrow)
      const known = seen.get(key)
      if (!known || comparePleasant(next, known) < 0) seen.set(key, next)
    }
  }
  const all = [...seen.values()]
  if (all.length === 1) return all
  const ranked = all.map(trail => rank(ground, bounds, trail, day + 1))
  ranked.sort((a, b) => a.bound - b.bound || a.left - b.left || comparePleasant(a.trail, b.trail))
  return ranked.slice(0, breadth.trails).map(one => one.trail)
}

const rank = (ground: Ground, bounds: Bounds, trail: Trail, from: number): Ranked => ({
  trail,
  bound: finishBound(ground, bounds, trail.stand, from),
  left: leftToDo(ground, trail.stand),
})

/** Print time left plus a change-over for every lift it takes at least. */
function leftToDo(ground: Ground, stand: Stand): number {
  const { changeOver } = ground.input.crew
  return ground.sections.reduce((sum, section, s) => {
    const height = stand.heights[s]!
    return sum + printTimeBetween(section, height, section.layers) + section.liftsLeft[height]! * changeOver
  }, 0)
}
