import { instantAt } from '../clock/index.js'
import type { Site } from '../job/index.js'
import type { Instant, Seconds } from '../quantity/index.js'
import { hourAngle, sunOfDay } from './sun.js'

/** One calendar day's light. Polar days have no rise or set. */
export interface Daylight {
  readonly kind: 'day' | 'polar-day' | 'polar-night'
  readonly noon: Instant
  readonly rise?: Instant
  readonly set?: Instant
  readonly length: Seconds
}

/** Sun's centre this far under the horizon is called risen: refraction and half its disc. */
export const RISEN_DEGREES = -0.833
/** Civil twilight: outdoor work is still possible without lamps. */
export const CIVIL_DEGREES = -6

/**
 * When the sun passes a height on a local calendar day.
 *
 *   cos H = (sin h − sin φ sin δ)/(cos φ cos δ), refined at the passage itself
 *
 * Source   [Meeus1998] ch. 15, from memory; checked against [Reda2004] and an independent library.
 * Range    any latitude; where the sun does not pass, the day is polar.
 * Scatter  half a minute below 60° latitude; refraction makes it minutes near the poles.
 * Assumes  a flat horizon at the site's height.
 */
export function daylight(
  site: Pick<Site, 'latitude' | 'longitude' | 'timeZone'>,
  date: string,
  altitudeDegrees: number = RISEN_DEGREES,
): Daylight {
  const midday = instantAt(date, 12 * 3600, site.timeZone)
  const noon = solarNoonNear(midday, site.longitude)
  const half = passage(site, noon, altitudeDegrees)
  if (half === 'always') return { kind: 'polar-day', noon, length: 86400 }
  if (half === 'never') return { kind: 'polar-night', noon, length: 0 }
  const rise = refine(site, noon - half, noon, -1, altitudeDegrees)
  const set = refine(site, noon + half, noon, 1, altitudeDegrees)
  return { kind: 'day', noon, rise, set, length: set - rise }
}

/** The moment nearest to this one at which the sun crosses the meridian. Longitude in degrees. */
export function solarNoonNear(at: Instant, longitude: number): Instant {
  let noon = at
  for (let step = 0; step < 3; step += 1)
    noon -= (hourAngle(noon, longitude, sunOfDay(noon).equationOfTimeMinutes) / (2 * Math.PI)) * 86400
  return noon
}

function passage(
  site: Pick<Site, 'latitude'>,
  at: Instant,
  altitudeDegrees: number,
): Seconds | 'always' | 'never' {
  const sun = sunOfDay(at)
  const latitude = (site.latitude * Math.PI) / 180
  const cosine =
    (Math.sin((altitudeDegrees * Math.PI) / 180) - Math.sin(latitude) * sun.sinDeclination) /
    (Math.cos(latitude) * sun.cosDeclination)
  if (cosine <= -1) return 'always'
  if (cosine >= 1) return 'never'
  return (Math.acos(cosine) / (2 * Math.PI)) * 86400
}

function refine(
  site: Pick<Site, 'latitude'>,
  guess: Instant,
  noon: Instant,
  side: 1 | -1,
  altitudeDegrees: number,
): Instant {
  const half = passage(site, guess, altitudeDegrees)
  // Within a day of the polar season the sun may pass at noon but not by the guess: keep the first answer.
  if (typeof half === 'string') return guess
  return noon + side * half
}
