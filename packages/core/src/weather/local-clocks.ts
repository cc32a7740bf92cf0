import { zoneOffset } from '../clock/index.js'
import type { Instant, Seconds } from '../quantity/index.js'

/**
 * Seconds after local midnight at the start of each hour.
 *
 * The zone's offset is asked for only where it may have changed: asking the runtime for each of 262,800 hours would
 * take longer than everything else. Days whose two ends agree are taken as of one offset.
 */
export function localClocks(hours: readonly { readonly start: Instant }[], zone: string): Float64Array {
  const clocks = new Float64Array(hours.length)
  const days = new Map<number, Seconds>()
  const atDay = (day: number): Seconds => {
    const known = days.get(day)
    if (known !== undefined) return known
    const asked = zoneOffset(day * 86400, zone)
    days.set(day, asked)
    return asked
  }
  let day = Number.NaN
  let offset = 0
  let steady = false
  hours.forEach(({ start }, index) => {
    const today = Math.floor(start / 86400)
    if (today !== day) {
      day = today
      offset = atDay(today)
      steady = offset === atDay(today + 1)
    }
    const local = start + (steady ? offset : zoneOffset(start, zone))
    clocks[index] = local - Math.floor(local / 86400) * 86400
  })
  return clocks
}
