import type { Instant } from '../quantity/index.js'

/** Hours in order of time, those that lie in part between two moments. */
export function hoursBetween<Hour extends { readonly start: Instant }>(
  hours: readonly Hour[],
  from: Instant,
  until: Instant,
): readonly Hour[] {
  const first = firstAfter(hours, from - 3600)
  let last = first
  while (last < hours.length && hours[last]!.start < until) last++
  return hours.slice(first, last)
}

/** Number of the first hour that starts after a moment. */
function firstAfter(hours: readonly { readonly start: Instant }[], moment: Instant): number {
  let [low, high] = [0, hours.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (hours[middle]!.start > moment) high = middle
    else low = middle + 1
  }
  return low
}
