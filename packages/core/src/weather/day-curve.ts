import type { Site } from '../job/index.js'
import type { Celsius, Instant, MetresPerSecond } from '../quantity/index.js'
import { cloudTransmission, haurwitzGlobal, type Irradiance, splitGlobal } from './clear-sky.js'
import type { SkyNormals } from './climate-normals.js'
import { extraterrestrialBeam, solarPosition, sunOfDay } from './sun.js'

/** Sun's clock at which the wind is strongest [h]. */
const WINDIEST = 14
/** Highest share of a clear sky that a day's mean may reach: thin, clean mountain air. */
const CLEAREST = 1.15
/** The wind's swing about its daily mean. */
const WIND_SWING = 0.3

/** Sunrise by the sun's clock [h]: 0 on a polar day, 12 on a polar night. */
export function sunriseClock(at: Instant, latitude: number): number {
  const { sinDeclination, cosDeclination } = sunOfDay(at)
  const φ = (latitude * Math.PI) / 180
  const cosine = (-Math.sin(φ) * sinDeclination) / (Math.cos(φ) * cosDeclination)
  const half = (Math.acos(Math.max(-1, Math.min(1, cosine))) / Math.PI) * 12
  return 12 - half
}

/** How long after the sun's noon the day is warmest [h], and how steeply the night cools. */
const LAG = 1.86
const COOLING = 2.2

/**
 * Air temperature by day [°C]: least + (most − least) sin(π (H − rise)/(D + 2·1.86 h)), D the day's length
 *
 * Source   [Parton1981], from memory; the coolest hour put at sunrise itself.
 * Range    from sunrise to sunset of a mean day.
 * Scatter  1 K against the mean days of real years; fronts and sea breeze do otherwise.
 * Assumes  a day without a change of weather.
 */
export function airByDay(most: Celsius, least: Celsius, clock: number, rise: number): Celsius {
  const length = 24 - 2 * rise
  return least + (most - least) * Math.sin((Math.PI * (clock - rise)) / (length + 2 * LAG))
}

/**
 * Air temperature by night [°C]: an exponential fall from sunset to the next sunrise's least
 *
 *   T = least + (Tset − least)(e^(−2.2 n) − e^(−2.2))/(1 − e^(−2.2)), n the share of the night gone
 *
 * Source   [Parton1981], from memory; stretched so that it meets the least at sunrise.
 * Range    from sunset to sunrise.
 * Scatter  as `airByDay`.
 * Assumes  as `airByDay`.
 */
export function airByNight(atSunset: Celsius, least: Celsius, share: number): Celsius {
  const end = Math.exp(-COOLING)
  return least + ((atSunset - least) * (Math.exp(-COOLING * share) - end)) / (1 - end)
}

/** Wind through a mean day [m/s]: mean (1 + 0.3 cos(2π (H − 14)/24)), strongest at 14 h by the sun. Source common practice, no source; Range inland; Assumes the mean is kept. */
export const windOfDay = (mean: MetresPerSecond, clock: number): MetresPerSecond =>
  mean * (1 + WIND_SWING * Math.cos((2 * Math.PI * (clock - WINDIEST)) / 24))

/** Gust of an hour over its mean wind [m/s]: 1.5, as of 3 s over an hour in open country. Source [Durst1960], from memory; Range open country; Assumes neutral air. */
export const gustOf = (wind: MetresPerSecond): MetresPerSecond => 1.5 * wind

/**
 * Sun of one hour of a mean day: the day's global radiation laid out like a clear day's, then split.
 *
 * Source   shape [Haurwitz1945]; cloud [KastenCzeplak1980]; split [Erbs1982].
 * Range    any day; more than 1.15 of the clear sky is held there.
 * Scatter  a mean day is hazier than a clear one and brighter than a dull one: means, not days.
 * Assumes  the same cover all day.
 */
export function sunOfHour(
  site: Pick<Site, 'latitude' | 'longitude'>,
  start: Instant,
  share: number,
): Irradiance {
  let global = 0
  let sine = 0
  // Four moments: hours at sunrise and sunset are part night.
  for (const minutes of [7.5, 22.5, 37.5, 52.5]) {
    const s = Math.sin(solarPosition(start + minutes * 60, site.latitude, site.longitude).altitude)
    if (s <= 0) continue
    global += haurwitzGlobal(s) / 4
    sine += s / 4
  }
  return splitGlobal(share * global, sine, extraterrestrialBeam(start))
}

/** Share of the clear sky's radiation that a mean day has; `noon` by the sun. */
export function clearShare(site: Pick<Site, 'latitude'>, noon: Instant, sky: SkyNormals): number {
  if (sky.kind === 'cloud') return cloudTransmission(sky.cover)
  const clear = clearDay(site, noon)
  return clear > 0 ? Math.min(CLEAREST, (sky.megajoulesPerDay * 1e6) / clear) : 1
}

/** Clear sky's global radiation of a day [J/m²]: both halves alike, by quarter hours. */
function clearDay({ latitude }: Pick<Site, 'latitude'>, noon: Instant): number {
  const { sinDeclination, cosDeclination } = sunOfDay(noon)
  const φ = (latitude * Math.PI) / 180
  const [a, b] = [Math.sin(φ) * sinDeclination, Math.cos(φ) * cosDeclination]
  let sum = 0
  for (let quarter = 0; quarter < 48; quarter += 1)
    sum += 2 * 900 * haurwitzGlobal(a + b * Math.cos(((quarter + 0.5) / 48) * Math.PI))
  return sum
}
