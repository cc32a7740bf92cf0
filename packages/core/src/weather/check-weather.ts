import type { Site } from '../job/index.js'
import { sayQuantity, type Units } from '../limit/index.js'
import { formatQuantity, type Instant } from '../quantity/index.js'
import type { Finding, Problem } from '../result/index.js'
import type { WeatherHour } from './site-hour.js'
import { extraterrestrialBeam, solarPosition } from './sun.js'

/** What weather can be on Earth; outside, a unit or a column is wrong. */
export const weatherRange = {
  air: { least: -65, most: 56, unit: '°C', hint: 'Is the column in °F or K?' },
  humidity: { least: 0, most: 1.005, unit: '', hint: 'Is the column in per cent?' },
  wind: { least: 0, most: 70, unit: 'm/s', hint: 'Is the column in km/h or knots?' },
  gust: { least: 0, most: 115, unit: 'm/s', hint: 'Is the column in km/h or knots?' },
  rain: { least: 0, most: 310, unit: 'mm/h', hint: 'Is the column a running total?' },
  global: { least: 0, most: 1500, unit: 'W/m²', hint: 'Is the column in kJ/m² or J/m²?' },
  beam: { least: 0, most: 1420, unit: 'W/m²', hint: 'Is the column in kJ/m² or J/m²?' },
  diffuse: { least: 0, most: 1200, unit: 'W/m²', hint: 'Is the column in kJ/m² or J/m²?' },
  pressure: {
    least: 45000,
    most: 112000,
    unit: 'Pa',
    hint: 'Is the column in hPa, or reduced to sea level?',
  },
} as const

type Measured = keyof typeof weatherRange
const measured = Object.keys(weatherRange) as Measured[]

/**
 * Everything wrong with a series of hours: gaps, doubles, disorder, impossible values, sun at night. Each kind is told once, with
 * its first place, its count and what to do, so that one wrong unit does not make eight thousand lines.
 */
export function checkWeather(
  hours: readonly WeatherHour[],
  site: Pick<Site, 'latitude' | 'longitude'>,
): readonly Problem[] {
  return [
    ...stepProblems(hours),
    ...measured.flatMap(key => valueProblems(hours, key)),
    ...sunProblems(hours, site),
  ]
}

function stepProblems(hours: readonly WeatherHour[]): readonly Problem[] {
  const kinds = {
    gap: { first: undefined as Instant | undefined, count: 0 },
    double: { first: undefined as Instant | undefined, count: 0 },
    back: { first: undefined as Instant | undefined, count: 0 },
  }
  for (let index = 1; index < hours.length; index += 1) {
    const step = hours[index]!.start - hours[index - 1]!.start
    if (step === 3600) continue
    const kind = step === 0 ? kinds.double : step < 0 ? kinds.back : kinds.gap
    kind.first ??= hours[index]!.start
    kind.count += step > 3600 ? Math.round(step / 3600) - 1 : 1
  }
  const words = {
    gap: ['missing hours', 'Another source fills them where there is one.'],
    double: [
      'hours given twice',
      'In autumn the clock shows one hour twice: give the file’s offset from UTC.',
    ],
    back: ['steps back in time', 'Sort the file, or say that its months come from different years.'],
  } as const
  return (['gap', 'double', 'back'] as const).flatMap(key => {
    const { first, count } = kinds[key]
    if (first === undefined) return []
    const [what, advice] = words[key]
    return [
      {
        code: `weather/${key}`,
        at: stamp(first),
        say: `${count} ${what}, the first at ${stamp(first)}. ${advice}`,
        values: { count },
      },
    ]
  })
}

function valueProblems(hours: readonly WeatherHour[], key: Measured): readonly Problem[] {
  const { least, most, unit, hint } = weatherRange[key]
  const wrong = hours.filter(hour => !(hour[key] >= least && hour[key] <= most))
  const first = wrong[0]
  if (!first) return []
  const value = first[key]
  return [
    {
      code: 'weather/impossible',
      at: stamp(first.start),
      say: `${key} is ${Number(value.toFixed(2))} ${unit} at ${stamp(first.start)} and out of ${least}–${most} ${unit} in ${wrong.length} hours. ${hint}`,
      values: { value, least, most, count: wrong.length },
    },
  ]
}

/** Sun well below the horizon, or more than the sun has: the clock or the zone is wrong. */
function sunProblems(
  hours: readonly WeatherHour[],
  site: Pick<Site, 'latitude' | 'longitude'>,
): readonly Problem[] {
  const dark = hours.filter(hour => hour.global > 20 && highestSun(hour.start, site) < -0.03)
  const bright = hours.filter(hour => {
    const sine = Math.max(0.1, Math.sin(highestSun(hour.start, site)))
    return hour.global > 1.3 * extraterrestrialBeam(hour.start) * sine + 50
  })
  const tell = (wrong: readonly WeatherHour[], code: string, what: string): readonly Problem[] => {
    const first = wrong[0]
    if (!first) return []
    return [
      {
        code,
        at: stamp(first.start),
        say: `${wrong.length} hours have ${what}, the first at ${stamp(first.start)} with ${Math.round(first.global)} W/m². Check the time zone, the daylight-saving rule, the site’s longitude and whether stamps mark the start or the end.`,
        values: { count: wrong.length },
      },
    ]
  }
  return [
    ...tell(dark, 'weather/sun-at-night', 'sun while it is night'),
    ...tell(bright, 'weather/too-much-sun', 'more sun than reaches the air'),
  ]
}

const highestSun = (start: Instant, { latitude, longitude }: Pick<Site, 'latitude' | 'longitude'>): number =>
  Math.max(
    solarPosition(start, latitude, longitude).altitude,
    solarPosition(start + 3600, latitude, longitude).altitude,
  )

/** How far a station may stand from the site, and above or below it, before its weather is another. */
export const stationReach = { metres: 50_000, elevation: 300 } as const

/** Whether a station's weather may stand for the site's. Source: common practice, no source. */
export function checkStation(
  station: Pick<Site, 'name' | 'latitude' | 'longitude' | 'elevation'>,
  site: Pick<Site, 'name' | 'latitude' | 'longitude' | 'elevation'>,
  units: Units = 'metric',
): readonly Finding[] {
  const away = distanceBetween(station, site)
  const higher = Math.abs(station.elevation - site.elevation)
  const finding = (demand: number, capacity: number, say: string): Finding => ({
    check: 'weather-station',
    at: station.name,
    demand,
    capacity,
    unit: 'm',
    source: 'common practice, no source',
    verdict: 'warn',
    say,
  })
  return [
    ...(away > stationReach.metres
      ? [
          finding(
            away,
            stationReach.metres,
            `${station.name} is ${sayQuantity(Math.round(away / 1000), 'km', units)} from ${site.name}; beyond ${sayQuantity(stationReach.metres / 1000, 'km', units)} compare it with a few days on site first.`,
          ),
        ]
      : []),
    ...(higher > stationReach.elevation
      ? [
          finding(
            higher,
            stationReach.elevation,
            `${station.name} lies ${formatQuantity(higher, 'length', units, { unit: units === 'metric' ? 'm' : 'ft', step: 1 })} higher or lower than ${site.name}: expect about ${sayQuantity(higher * 0.0065, 'K', units)} difference.`,
          ),
        ]
      : []),
  ]
}

/** Great-circle distance [m] on a sphere of 6,371 km (haversine). */
export function distanceBetween(
  a: Pick<Site, 'latitude' | 'longitude'>,
  b: Pick<Site, 'latitude' | 'longitude'>,
): number {
  const rad = Math.PI / 180
  const φ = Math.sin(((b.latitude - a.latitude) * rad) / 2) ** 2
  const λ = Math.sin(((b.longitude - a.longitude) * rad) / 2) ** 2
  return (
    2 *
    6_371_000 *
    Math.asin(Math.min(1, Math.sqrt(φ + Math.cos(a.latitude * rad) * Math.cos(b.latitude * rad) * λ)))
  )
}

const stamp = (at: Instant): string => `${new Date(at * 1000).toISOString().slice(0, 16)}Z`
