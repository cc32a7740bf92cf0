import type { Lift } from '../campaign/index.js'
import { type CurePlan, cureLifts, FOLLOWED, standingWalls } from '../cure/index.js'
import type { Job } from '../job/index.js'
import type { Section } from '../section/index.js'
import type { PrintHour } from '../weather/index.js'
import { kept } from './plan-cache.js'

/** The cure of every lift; a lift that stays where and when it was, in the same weather, keeps its own. */
export function keptCures(
  job: Job,
  sections: readonly Section[],
  lifts: readonly Lift[],
  hours: readonly PrintHour[],
  cache: Map<string, CurePlan>,
): readonly CurePlan[] {
  const { site, mix, rules, batching, print, units } = job
  const common = JSON.stringify([site, mix, rules, batching, print, units])
  const keys = lifts.map(lift => {
    const stretches = sections.find(section => section.id === lift.section)?.stretches ?? []
    const walls = job.walls.filter(({ id }) => stretches.some(({ wall }) => wall === id))
    // What stands around it shades it.
    const around = standingWalls(job, sections, lifts, lift.end)
    return JSON.stringify([common, lift, stretches, walls, around, weatherOf(lift, hours)])
  })
  // All lifts not yet known at once: they share the weather of their sides.
  const fresh = cureLifts(
    job,
    sections,
    lifts.filter((_, i) => !cache.has(keys[i]!)),
    hours,
    { among: lifts },
  )
  const made = new Map(fresh.map(cure => [cure.lift, cure]))
  return lifts.map((lift, i) => kept(cache, keys[i]!, () => made.get(lift.id)!))
}

/** The hours that a lift's cure reads. */
const weatherOf = (lift: Lift, hours: readonly PrintHour[]) =>
  hours
    .filter(({ start }) => start >= lift.start - 86400 && start < lift.end + FOLLOWED)
    .map(({ weather, mixTemperature, mixTemperatureChilled }) => [
      Object.values(weather),
      mixTemperature,
      mixTemperatureChilled,
    ])
