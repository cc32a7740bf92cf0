import type { Metres, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import { gaussHeights } from './strip.js'
import { gaussPoints } from './strip-element.js'

/** When the layers of a lift are down, counted from the lift's start, and how fast they age. */
export interface LiftAge {
  readonly layerHeight: Metres
  /** Layer i + 1 of the lift is down [s]. */
  readonly ends: readonly Seconds[]
  /** Equivalent seconds per second. */
  readonly factor: number
}

/** The same lift carried on to `layers` layers at its own pace: the median of its layer times, so that a hold does not count. */
export function carriedOn(lift: LiftAge, layers: number): LiftAge {
  if (layers <= lift.ends.length) return lift
  const pace = medianLayerTime(lift.ends)
  const ends = [...lift.ends]
  while (ends.length < layers) ends.push(ends[ends.length - 1]! + pace)
  return { ...lift, ends }
}

export function medianLayerTime(ends: readonly Seconds[]): Seconds {
  assert(ends.length > 0, 'a lift has layers')
  const times = ends.map((end, i) => end - (ends[i - 1] ?? 0)).sort((a, b) => a - b)
  return times[Math.floor((times.length - 1) / 2)]!
}

/** Equivalent age of layer `layer` (1 at the foot) at the moment layer `top` is down: counted from the layer's own end. */
export const layerAge = (lift: LiftAge, layer: number, top: number): Seconds =>
  (lift.ends[top - 1]! - lift.ends[layer - 1]!) * lift.factor

/** Modulus at the Gauss points of a strip that is `layers` layers high, foot first. */
export function modulusProfile(
  lift: LiftAge,
  layers: number,
  elements: number,
  modulusAt: (age: Seconds) => number,
): Float64Array {
  const profile = sharesOf(elements).slice()
  for (let i = 0; i < profile.length; i++) {
    const layer = Math.min(layers, Math.floor(profile[i]! * layers) + 1)
    profile[i] = modulusAt(layerAge(lift, layer, layers))
  }
  return profile
}

const shareTables = new Map<number, Float64Array>()

/** Heights of the Gauss points never change for a number of elements: kept. */
function sharesOf(elements: number): Float64Array {
  const known = shareTables.get(elements)
  if (known) return known
  const shares = gaussHeights(elements)
  assert(shares.length === elements * gaussPoints.length, 'one height for every Gauss point')
  shareTables.set(elements, shares)
  return shares
}
