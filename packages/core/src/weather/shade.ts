import type { Point } from '../geometry/index.js'
import type { Metres, Radians, Share } from '../quantity/index.js'
import type { SunPosition } from './sun.js'

/** A straight neighbour that can cast shade, in the building frame. */
export interface Neighbour {
  readonly from: Point
  readonly to: Point
  readonly top: Metres
}

type SunPlace = Pick<SunPosition, 'altitude' | 'azimuth'>

/**
 * Height to which neighbours shade the upright line through a point [m]: H = max(top − d·tan h) over the neighbours between it and the
 * sun, d metres away; −∞ where none stands there, +∞ while the sun is down.
 *
 * Source   geometry, closed form.
 * Range    any sun.
 * Assumes  neighbours thin and standing on the ground; a neighbour through the point itself does not shade it.
 */
export function shadeHeight(
  point: Point,
  sun: SunPlace,
  yAxisBearing: Radians,
  neighbours: readonly Neighbour[],
): Metres {
  if (sun.altitude <= 0) return Number.POSITIVE_INFINITY
  const towards = directionOf(sun.azimuth, yAxisBearing)
  const fall = Math.tan(sun.altitude)
  let height = Number.NEGATIVE_INFINITY
  for (const neighbour of neighbours) {
    const along = distanceAlong(point, towards, neighbour)
    if (along > 1e-6) height = Math.max(height, neighbour.top - along * fall)
  }
  return height
}

/** Whether a point of the building lies in a neighbour's shade. */
export const isShaded = (
  point: Point,
  height: Metres,
  sun: SunPlace,
  yAxisBearing: Radians,
  neighbours: readonly Neighbour[],
): boolean => shadeHeight(point, sun, yAxisBearing, neighbours) > height

/** Share of an upright stretch of wall that the beam reaches. */
export function sunlitShare(
  point: Point,
  [bottom, top]: readonly [bottom: Metres, top: Metres],
  sun: SunPlace,
  yAxisBearing: Radians,
  neighbours: readonly Neighbour[],
): Share {
  const shaded = shadeHeight(point, sun, yAxisBearing, neighbours)
  return Math.max(0, Math.min(1, (top - shaded) / (top - bottom)))
}

/** Directions in which the horizon is looked up: evenly spaced in the sine from the face's normal, so that each weighs the same. */
const LOOKS = 8

/**
 * Share of the half sky dome before an upright face that neighbours leave open: mean of 1 − (2β + sin 2β)/π over the directions φ before
 * the face, weighed by cos φ; β is the height of the neighbours there.
 *
 * Source   closed form of the isotropic sky over a horizon; a long wall opposite gives 1 − sin β.
 * Range    any neighbours.
 * Scatter  0.03 by its eight directions.
 * Assumes  the neighbour itself sends nothing back.
 */
export function openSky(
  point: Point,
  height: Metres,
  bearing: Radians,
  yAxisBearing: Radians,
  neighbours: readonly Neighbour[],
): Share {
  let open = 0
  for (let look = 0; look < LOOKS; look += 1) {
    const towards = directionOf(bearing + Math.asin((2 * look + 1) / LOOKS - 1), yAxisBearing)
    let slope = 0
    for (const neighbour of neighbours) {
      const along = distanceAlong(point, towards, neighbour)
      if (along > 1e-6) slope = Math.max(slope, (neighbour.top - height) / along)
    }
    const horizon = Math.atan(slope)
    open += 1 - (2 * horizon + Math.sin(2 * horizon)) / Math.PI
  }
  return open / LOOKS
}

const directionOf = (bearing: Radians, yAxisBearing: Radians): Point => [
  Math.sin(bearing - yAxisBearing),
  Math.cos(bearing - yAxisBearing),
]

/** How far along a ray from a point a segment is met; NaN if it is not. */
function distanceAlong(point: Point, towards: Point, { from, to }: Neighbour): Metres {
  const [ex, ey] = [to[0] - from[0], to[1] - from[1]]
  const cross = towards[0] * ey - towards[1] * ex
  if (Math.abs(cross) < 1e-12) return Number.NaN
  const [px, py] = [from[0] - point[0], from[1] - point[1]]
  const share = (px * towards[1] - py * towards[0]) / cross
  return share < 0 || share > 1 ? Number.NaN : (px * ey - py * ex) / cross
}
