import type { Site } from '../job/index.js'
import type { Celsius, Instant, MetresPerSecond, Pascals, Share } from '../quantity/index.js'
import { extraterrestrialFlat, splitGlobal } from './clear-sky.js'
import { gustOf } from './day-curve.js'
import { humidityFromDewPoint, saturationPressure, standardPressure } from './psychrometrics.js'
import type { HourSource, WeatherHour } from './site-hour.js'
import { extraterrestrialBeam, solarPosition } from './sun.js'

/** What a file or station gives of one hour; only the air temperature is indispensable. */
export interface Observation {
  readonly start: Instant
  readonly air: Celsius
  readonly humidity?: Share
  readonly dewPoint?: Celsius
  readonly wind?: MetresPerSecond
  readonly gust?: MetresPerSecond
  readonly rain?: number
  readonly global?: number
  readonly beam?: number
  readonly diffuse?: number
  readonly pressure?: Pascals
}

/** Hours ready for use, with what had to be assumed and for how many of them. */
export interface CompletedHours {
  readonly hours: readonly WeatherHour[]
  readonly assumed: readonly { readonly what: string; readonly hours: number; readonly source: string }[]
}

type Place = Pick<Site, 'latitude' | 'longitude' | 'elevation'>

/** Wind at 10 m where nobody measured it: 2 m/s at 2 m [Allen1998] brought up by the power law. */
const WIND_ASSUMED = 2 * (10 / 2) ** (1 / 7)

/**
 * Fills what a source leaves out, by the fallbacks of [Allen1998]: humidity from the day's coolest air (dew forms at dawn),
 * sun from the day's range of temperature (0.16 √range of the radiation outside the air), wind 2 m/s; and pressure by the
 * site's height, gust 1.5 times the mean wind, no rain where none is told. Everything assumed is counted and named.
 */
export function completeHours(
  observations: readonly Observation[],
  site: Place,
  source: HourSource,
): CompletedHours {
  const ranges = dayRanges(observations, site.longitude)
  const counts = new Map<keyof typeof fallbackWords, number>()
  const assume = <T>(what: keyof typeof fallbackWords, value: T): T => {
    counts.set(what, (counts.get(what) ?? 0) + 1)
    return value
  }
  const hours = observations.map(seen => completeHour(seen, site, source, ranges(seen.start), assume))
  const assumed = [...counts].map(([what, count]) => ({ ...fallbackWords[what], hours: count }))
  return { hours, assumed }
}

const fallbackWords = {
  humidity: { what: 'humidity: dew point taken as the coolest air of the day', source: 'Allen1998' },
  wind: { what: 'wind: 2 m/s at 2 m, 2.5 m/s at 10 m', source: 'Allen1998' },
  gust: { what: 'gusts: 1.5 times the mean wind', source: 'Durst1960' },
  rain: { what: 'rain: none', source: 'common practice, no source' },
  sun: { what: 'sun: from the range of the day’s temperature', source: 'Allen1998' },
  split: { what: 'beam and sky: split from the global radiation', source: 'Erbs1982' },
  pressure: { what: 'air pressure: standard atmosphere at the site’s height', source: 'ASHRAE2017' },
} as const

type Assume = <T>(what: keyof typeof fallbackWords, value: T) => T

function completeHour(
  seen: Observation,
  site: Place,
  source: HourSource,
  range: readonly [Celsius, Celsius],
  assume: Assume,
): WeatherHour {
  const wind = seen.wind ?? assume('wind', WIND_ASSUMED)
  return {
    start: seen.start,
    air: seen.air,
    humidity: humidityOf(seen, range, assume),
    wind,
    gust: seen.gust ?? assume('gust', gustOf(wind)),
    rain: seen.rain ?? assume('rain', 0),
    ...sunOf(seen, site, range, assume),
    pressure: seen.pressure ?? assume('pressure', standardPressure(site.elevation)),
    source,
  }
}

function humidityOf(seen: Observation, [least]: readonly [Celsius, Celsius], assume: Assume): Share {
  if (seen.humidity !== undefined) return seen.humidity
  if (seen.dewPoint !== undefined) return humidityFromDewPoint(seen.air, seen.dewPoint)
  return assume('humidity', Math.min(1, saturationPressure(least) / saturationPressure(seen.air)))
}

function sunOf(
  seen: Observation,
  site: Place,
  [least, most]: readonly [Celsius, Celsius],
  assume: Assume,
): Pick<WeatherHour, 'global' | 'beam' | 'diffuse'> {
  const { global, beam, diffuse } = seen
  if (global !== undefined && beam !== undefined && diffuse !== undefined) return { global, beam, diffuse }
  const middle = seen.start + 1800
  const sine = Math.sin(solarPosition(middle, site.latitude, site.longitude).altitude)
  const outside = extraterrestrialBeam(middle)
  if (global !== undefined) return assume('split', splitGlobal(global, sine, outside))
  if (beam !== undefined && diffuse !== undefined)
    return { global: diffuse + beam * Math.max(0, sine), beam, diffuse }
  const share = 0.16 * Math.sqrt(Math.max(0, most - least))
  return assume(
    'sun',
    splitGlobal(Math.min(0.78, share) * extraterrestrialFlat(outside, sine), sine, outside),
  )
}

/** Coolest and warmest air of the day (by the sun's midnight) an hour lies in. */
function dayRanges(
  observations: readonly Observation[],
  longitude: number,
): (at: Instant) => readonly [Celsius, Celsius] {
  const dayOf = (at: Instant) => Math.floor((at + longitude * 240) / 86400)
  const ranges = new Map<number, [Celsius, Celsius]>()
  for (const { start, air } of observations) {
    const range = ranges.get(dayOf(start))
    if (!range) ranges.set(dayOf(start), [air, air])
    else {
      range[0] = Math.min(range[0], air)
      range[1] = Math.max(range[1], air)
    }
  }
  return at => ranges.get(dayOf(at))!
}
