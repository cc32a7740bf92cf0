import type { Point } from '../geometry/index.js'
import type { Radians, Share } from '../quantity/index.js'
import type { Irradiance } from './clear-sky.js'
import type { SunPosition } from './sun.js'

/** Share of the sun that the ground around throws back: dry soil and slab. Common practice, no source. */
export const GROUND_REFLECTION = 0.2

/** Sun on one wall face, by where it comes from [W/m²]. */
export interface FaceSun {
  readonly beam: number
  readonly sky: number
  readonly ground: number
  readonly total: number
}

/**
 * Sun on an upright face [W/m²].
 *
 *   I = DNI·max(0, cos h·cos(A − bearing)) + ½ DHI + ½ ρ GHI
 *
 * @param bearing  direction the face looks, clockwise from true north [rad]
 * @param sunlit   share of the face the beam reaches, 0–1
 * @param skyView  share of the half sky dome that neighbours leave open, 0–1
 *
 * Source   [Duffie2013] isotropic sky, from memory.
 * Range    any hour.
 * Scatter  10 % low on clear afternoons for faces towards the sun (bright sky about it is left out).
 * Assumes  sky equally bright all over; ground reflection 0.2.
 */
export function faceIrradiance(
  sky: Irradiance,
  sun: Pick<SunPosition, 'altitude' | 'azimuth'>,
  bearing: Radians,
  sunlit: Share = 1,
  skyView: Share = 1,
): FaceSun {
  const incidence = sun.altitude > 0 ? Math.cos(sun.altitude) * Math.cos(sun.azimuth - bearing) : 0
  const beam = sky.beam * Math.max(0, incidence) * sunlit
  const fromSky = 0.5 * sky.diffuse * skyView
  const ground = 0.5 * GROUND_REFLECTION * sky.global
  return { beam, sky: fromSky, ground, total: beam + fromSky + ground }
}

/** Cosine between the sun and the normal of a plane: 0 tilt lies flat, π/2 stands upright. Source geometry; negative behind the plane. */
export const incidenceCosine = (
  sun: Pick<SunPosition, 'altitude' | 'azimuth'>,
  tilt: Radians,
  bearing: Radians,
): number =>
  Math.sin(sun.altitude) * Math.cos(tilt) +
  Math.cos(sun.altitude) * Math.sin(tilt) * Math.cos(sun.azimuth - bearing)

/** Bearing that a face looks towards: the left or right side of a wall running from one point to the other. */
export function faceBearing(from: Point, to: Point, side: 'left' | 'right', yAxisBearing: Radians): Radians {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const [nx, ny] = side === 'left' ? [-dy, dx] : [dy, -dx]
  const bearing = Math.atan2(nx, ny) + yAxisBearing
  return ((bearing % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
}
