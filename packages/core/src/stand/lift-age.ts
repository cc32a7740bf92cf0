import type { Metres, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
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

/**
 * Modulus at the Gauss points of a strip that is `layers` layers high, foot first. Each point speaks for its share of the
 * height, with the mean of the layers that lie there: asked at the point alone, a strip of more layers than points would jump
 * from one layer to the next.
 */
export function modulusProfile(
  lift: LiftAge,
  layers: number,
  elements: number,
  modulusAt: (age: Seconds) => number,
): Float64Array {
  const summed = new Float64Array(layers + 1)
  for (let layer = 1; layer <= layers; layer++)
    summed[layer] = summed[layer - 1]! + modulusAt(layerAge(lift, layer, layers))
  const upTo = (share: number): number => {
    const whole = Math.min(layers - 1, Math.floor(share * layers))
    return summed[whole]! + (share * layers - whole) * (summed[whole + 1]! - summed[whole]!)
  }
  const edges = cellEdgesOf(elements)
  const profile = new Float64Array(edges.length - 1)
  let below = 0
  for (let i = 0; i < profile.length; i++) {
    const above = upTo(edges[i + 1]!)
    profile[i] = (above - below) / ((edges[i + 1]! - edges[i]!) * layers)
    below = above
  }
  return profile
}

const edgeTables = new Map<number, Float64Array>()

/** Where the share of one Gauss point ends and the next one begins, as shares of the height: they never change, so kept. */
function cellEdgesOf(elements: number): Float64Array {
  const known = edgeTables.get(elements)
  if (known) return known
  const edges = new Float64Array(elements * gaussPoints.length + 1)
  for (let e = 0; e < elements; e++) {
    let within = 0
    gaussPoints.forEach(({ weight }, g) => {
      within += weight
      edges[e * gaussPoints.length + g + 1] = (e + within) / elements
    })
  }
  edgeTables.set(elements, edges)
  return edges
}
