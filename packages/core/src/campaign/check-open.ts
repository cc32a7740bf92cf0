import { isBeyond, type Limit, type LimitKind, marginOf } from '../limit/index.js'
import type { Instant } from '../quantity/index.js'
import { hoursBetween, type PrintHour } from '../weather/index.js'

/** Known by the whole hour; everything else goes straight from the middle of one hour to that of the next. */
const byTheHour: readonly LimitKind[] = ['rain', 'gust', 'permitted-hours']

const SLACK = 1e-6
const CIVIL_DUSK = (-6 * Math.PI) / 180

/**
 * Whether a layer is laid while every limit of the weather holds; written apart from the stretches the scheduler uses.
 * Margins go straight between the middles of hours, so they are looked at where the layer begins and ends and at each middle in between.
 */
export function isOpenThroughout(
  hours: readonly PrintHour[],
  begin: Instant,
  end: Instant,
  chilled: boolean,
): boolean {
  const near = hoursBetween(hours, begin - 3600, end + 3600)
  const touched = near.filter(({ start }) => start < end - SLACK && start + 3600 > begin + SLACK)
  const known = touched.reduce(
    (sum, { start }) => sum + Math.min(start + 3600, end) - Math.max(start, begin),
    0,
  )
  if (known < end - begin - 2 * SLACK) return false
  if (touched.some(hour => hour.limits.some(limit => byTheHour.includes(limit.kind) && isBeyond(limit))))
    return false
  const middles = touched.filter(({ start }) => start + 1800 >= begin && start + 1800 <= end)
  if (middles.some(hour => !isOpen(hour, chilled))) return false
  return [begin, end].every(at => holdsAt(near, at, chilled))
}

/** Open, with the chiller on where tap water is too warm; a mix too hot is cured by water cold enough. */
function isOpen(hour: PrintHour, chilled: boolean): boolean {
  const warmest = hour.limits.find(limit => limit.kind === 'mix-hot')?.capacity ?? Number.POSITIVE_INFINITY
  if (hour.mixTemperature <= warmest) return hour.open
  const cold = hour.mixTemperatureChilled
  if (!chilled || cold === undefined || cold > warmest) return false
  return hour.limits.every(limit => limit.kind === 'mix-hot' || limit.demand <= limit.capacity)
}

function holdsAt(hours: readonly PrintHour[], at: Instant, chilled: boolean): boolean {
  const before = hours.filter(({ start }) => start + 1800 <= at).at(-1)
  const after = hours.find(({ start }) => start + 1800 > at)
  const [first, second] = [before ?? after, after ?? before]
  if (!first || !second) return false
  const share = Math.min(1, Math.max(0, (at - first.start - 1800) / 3600))
  return first.limits.every(limit => {
    if (byTheHour.includes(limit.kind)) return true
    const [m, n] = [marginIn(first, limit, chilled), marginIn(second, limit, chilled)]
    return m + (n - m) * share >= -1e-6
  })
}

function marginIn(hour: PrintHour, { kind }: Limit, chilled: boolean): number {
  const limit = hour.limits.find(each => each.kind === kind)
  if (!limit) return Number.POSITIVE_INFINITY
  if (kind === 'daylight') return limit.demand > 0 ? hour.sunAltitude - CIVIL_DUSK : 1
  const cold = hour.mixTemperatureChilled
  if (kind === 'mix-hot' && chilled && cold !== undefined)
    return limit.capacity - Math.min(limit.demand, cold)
  return marginOf(limit)
}
