import type { Lift } from '../campaign/index.js'
import { type CurePlan, cureLifts, FOLLOWED, standingWalls } from '../cure/index.js'
import type { Job } from '../job/index.js'
import type { Instant } from '../quantity/index.js'
import type { Section } from '../section/index.js'
import { hoursBetween, type PrintHour } from '../weather/index.js'
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
  const around = surroundings(job, sections, lifts)
  const keys = lifts.map(({ id, section, firstLayer, lastLayer, start, end }) => {
    const stretches = sections.find(each => each.id === section)?.stretches ?? []
    const walls = job.walls.filter(wall => stretches.some(stretch => stretch.wall === wall.id))
    const own = JSON.stringify([id, section, firstLayer, lastLayer, start, end, stretches, walls])
    return [common, own, around(end), weatherBetween(hours, start - 86400, end + FOLLOWED)].join('\n')
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

/** What stands at a moment shades what is cured then; written once for each height of each section. */
function surroundings(
  job: Job,
  sections: readonly Section[],
  lifts: readonly Lift[],
): (at: Instant) => string {
  const texts = new Map<string, string>()
  return at =>
    sections
      .map(section => {
        const below = lifts.filter(lift => lift.section === section.id && lift.end <= at)
        const key = `${section.id} ${Math.max(0, ...below.map(lift => lift.lastLayer))}`
        return kept(texts, key, () => JSON.stringify(standingWalls(job, [section], below, at)))
      })
      .join()
}

/** The hours that a lift's cure reads. */
const weatherBetween = (hours: readonly PrintHour[], from: Instant, until: Instant): string =>
  hoursBetween(hours, from, until).map(hourText).join()

const texts = new WeakMap<PrintHour, string>()

/** Hours stay the same objects while the weather does. */
function hourText(hour: PrintHour): string {
  const known = texts.get(hour)
  if (known !== undefined) return known
  const { weather, mixTemperature, mixTemperatureChilled } = hour
  const text = JSON.stringify([Object.values(weather), mixTemperature, mixTemperatureChilled])
  texts.set(hour, text)
  return text
}
