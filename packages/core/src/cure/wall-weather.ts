import type { Site } from '../job/index.js'
import type { Instant, Metres, Radians, Share } from '../quantity/index.js'
import {
  cloudsUnder,
  dewPoint,
  faceIrradiance,
  humidityRatio,
  KELVIN,
  type SunPosition,
  saturationPressure,
  skyTemperature,
  solarPosition,
  type WeatherHour,
  windAtHeight,
} from '../weather/index.js'

/** What one hour does to a wall's two faces; values hold at the hour's middle. */
export interface WallWeather {
  readonly first: Instant
  readonly count: number
  readonly air: Float64Array
  /** kg of vapour per kg of dry air. */
  readonly vapour: Float64Array
  /** Film by the wind alone [W/m²K]. */
  readonly film: Float64Array
  /** What the faces radiate against [K]: half sky, half ground at air temperature. */
  readonly surroundings: Float64Array
  readonly sunLeft: Float64Array
  readonly sunRight: Float64Array
  readonly pressure: Float64Array
}

/** Where a wall stands: the bearing its left face looks to (the right one looks back) and the height of what is computed. */
export interface WallPlace {
  readonly leftBearing: Radians
  readonly height: Metres
  /** Share of the beam each face gets at a moment, where neighbours shade it; 1 where absent. */
  readonly sunlit?: (at: Instant, side: 'left' | 'right') => Share
  /** Share of the sky each face sees past its neighbours; 1 where absent. */
  readonly skyView?: { readonly left: Share; readonly right: Share }
}

/**
 * Film coefficient of a face by wind alone [W/m²K]: h = 2.8 + 3 v
 *
 * @param wind  v at the face [m/s]
 *
 * The older 5.7 + 3.8 v holds radiation too. With the Lewis analogy this film gives the evaporation of [Uno1998] within a seventh from still
 * air to 20 km/h: wall heat and drying index speak of the same wind.
 *
 * Source   [Watmuff1977], from memory.
 * Range    0 to 7 m/s at the face.
 * Scatter  ±30 %.
 * Assumes  radiation counted apart.
 */
export const windFilm = (wind: number): number => 2.8 + 3 * wind

/** The wind that makes a film [m/s]: `windFilm` turned round. */
export const windOfFilm = (film: number): number => (film - 2.8) / 3

/**
 * Film coefficient of an outdoor face for heat loss of buildings [W/m²K]: 4 + 4 v
 *
 * Source   [ISO6946-2017], from memory.
 * Range    0 to 10 m/s at the face.
 * Scatter  ±30 %; on the safe side for losses.
 * Assumes  radiation counted apart.
 */
export const buildingFilm = (wind: number): number => 4 + 4 * wind

/** What hours have in common for every wall of a site, worked out once. */
export interface SiteSky {
  readonly hours: readonly WeatherHour[]
  readonly sun: readonly SunPosition[]
  readonly air: Float64Array
  readonly vapour: Float64Array
  readonly surroundings: Float64Array
  readonly pressure: Float64Array
}

export function siteSky(site: Pick<Site, 'latitude' | 'longitude'>, hours: readonly WeatherHour[]): SiteSky {
  const sun = hours.map(({ start }) => solarPosition(start + 1800, site.latitude, site.longitude))
  const clouds = cloudsUnder(hours, index => Math.sin(sun[index]!.altitude))
  return {
    hours,
    sun,
    air: Float64Array.from(hours, hour => hour.air),
    vapour: Float64Array.from(hours, hour =>
      humidityRatio(hour.humidity * saturationPressure(hour.air), hour.pressure),
    ),
    surroundings: Float64Array.from(hours, (hour, index) => surroundingsOf(hour, clouds[index]!)),
    pressure: Float64Array.from(hours, hour => hour.pressure),
  }
}

/** The hours of a sky that begin in [from, until); they lie without gaps. */
export function skyBetween(sky: SiteSky, from: Instant, until: Instant): SiteSky {
  const first = sky.hours[0]?.start ?? 0
  const place = (at: Instant) => Math.max(0, Math.min(sky.hours.length, Math.ceil((at - first) / 3600)))
  const [a, b] = [place(from), place(until)]
  return {
    hours: sky.hours.slice(a, b),
    sun: sky.sun.slice(a, b),
    air: sky.air.subarray(a, b),
    vapour: sky.vapour.subarray(a, b),
    surroundings: sky.surroundings.subarray(a, b),
    pressure: sky.pressure.subarray(a, b),
  }
}

/** Hours made ready for one wall. */
export const wallWeather = (
  site: Pick<Site, 'latitude' | 'longitude'>,
  hours: readonly WeatherHour[],
  place: WallPlace,
): WallWeather => wallWeatherUnder(siteSky(site, hours), place)

export function wallWeatherUnder(sky: SiteSky, place: WallPlace): WallWeather {
  const { hours, sun, air, vapour, surroundings, pressure } = sky
  const share = windAtHeight(1, Math.max(0.5, place.height))
  const onFace = (side: 'left' | 'right') => {
    const bearing = place.leftBearing + (side === 'left' ? 0 : Math.PI)
    const open = place.skyView?.[side] ?? 1
    return Float64Array.from(hours, (hour, index) => {
      const lit = place.sunlit?.(hour.start + 1800, side) ?? 1
      return faceIrradiance(hour, sun[index]!, bearing, lit, open).total
    })
  }
  return {
    first: hours[0]?.start ?? 0,
    count: hours.length,
    air,
    vapour,
    film: Float64Array.from(hours, hour => windFilm(hour.wind * share)),
    surroundings,
    sunLeft: onFace('left'),
    sunRight: onFace('right'),
    pressure,
  }
}

function surroundingsOf(hour: WeatherHour, cloud: number): number {
  const sky = skyTemperature(hour.air, dewPoint(hour.air, hour.humidity), cloud) + KELVIN
  return ((sky ** 4 + (hour.air + KELVIN) ** 4) / 2) ** 0.25
}

/** Cloud cover of each hour of a site: see `cloudsUnder`. */
export const cloudCovers = (
  site: Pick<Site, 'latitude' | 'longitude'>,
  hours: readonly WeatherHour[],
): Float64Array =>
  cloudsUnder(hours, index =>
    Math.sin(solarPosition(hours[index]!.start + 1800, site.latitude, site.longitude).altitude),
  )
