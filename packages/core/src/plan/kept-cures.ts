import type { Lift } from '../campaign/index.js'
import { cureLifts, FOLLOWED, standingWalls } from '../cure/index.js'
import type { Job } from '../job/index.js'
import type { Instant } from '../quantity/index.js'
import type { Section } from '../section/index.js'
import { hoursBetween, type PrintHour } from '../weather/index.js'
import type { LiftCure } from './plan.js'
import { kept, type PlanCache } from './plan-cache.js'
import type { TextNumbers } from './text-numbers.js'

/** The cure of every lift; a lift that stays where and when it was, in the same weather, keeps its own. */
export function keptCures(
  job: Job,
  sections: readonly Section[],
  lifts: readonly Lift[],
  hours: readonly PrintHour[],
  { cures: cache, numbers }: Pick<PlanCache, 'cures' | 'numbers'>,
): readonly LiftCure[] {
  const { site, mix, rules, batching, print, units } = job
  const common = numbers.of(JSON.stringify([site, mix, rules, batching, print, units]))
  const around = surroundings(job, sections, lifts, numbers)
  const weather = (from: Instant, until: Instant) =>
    hoursBetween(hours, from, until).map(hour => numbers.said(hour, hourText))
  const keys = lifts.map(({ id, section, firstLayer, lastLayer, start, end }) => {
    const stretches = sections.find(each => each.id === section)?.stretches ?? []
    const walls = job.walls.filter(wall => stretches.some(stretch => stretch.wall === wall.id))
    const own = JSON.stringify([id, section, firstLayer, lastLayer, start, end, stretches, walls])
    return [common, own, around(end), weather(start - 86400, end + FOLLOWED)].join('\n')
  })
  // All lifts not yet known at once: they share the weather of their sides.
  const fresh = cureLifts(
    job,
    sections,
    lifts.filter((_, i) => !cache.has(keys[i]!)),
    hours,
    { among: lifts },
  )
  const made = new Map(fresh.map(({ heat: _, ...cure }) => [cure.lift, cure]))
  return lifts.map((lift, i) => kept(cache, keys[i]!, () => made.get(lift.id)!))
}

/** What stands at a moment shades what is cured then; written once for each height of each section. */
function surroundings(
  job: Job,
  sections: readonly Section[],
  lifts: readonly Lift[],
  numbers: TextNumbers,
): (at: Instant) => string {
  const known = new Map<string, number>()
  return at =>
    sections
      .map(section => {
        const below = lifts.filter(lift => lift.section === section.id && lift.end <= at)
        const key = `${section.id} ${Math.max(0, ...below.map(lift => lift.lastLayer))}`
        const walls = () => JSON.stringify(standingWalls(job, [section], below, at))
        return kept(known, key, () => numbers.of(walls()))
      })
      .join()
}

/** What a cure reads of an hour. */
const hourText = ({ weather, mixTemperature, mixTemperatureChilled }: PrintHour): string =>
  JSON.stringify([Object.values(weather), mixTemperature, mixTemperatureChilled])
