import { inset, type Region } from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'

/** Width of a region at its widest: the least distance at which shrinking removes it, twice; `most` when it is wider. */
export function patchWidth(region: Region, most: Metres): Metres {
  let [low, high] = [0, most]
  if (inset(region, most / 2, 'mitre').length > 0) return most
  for (let k = 0; k < 12; k++) {
    const middle = (low + high) / 2
    if (inset(region, middle / 2, 'mitre').length > 0) low = middle
    else high = middle
  }
  return high
}
