import { addDays, instantAt } from '../clock/index.js'
import type { Site } from '../job/index.js'
import type { Celsius, Instant } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { ClimateNormals } from './climate-normals.js'
import { airByDay, airByNight, clearShare, gustOf, sunOfHour, sunriseClock, windOfDay } from './day-curve.js'
import { type DayNormals, dayNormals } from './day-normals.js'
import { solarNoonNear } from './daylight.js'
import { humidityFromDewPoint, standardPressure } from './psychrometrics.js'
import { type RainSpell, rainInHour, spellsByChance, spellsByExpectation } from './rain-spell.js'
import type { WeatherHour } from './site-hour.js'

type Place = Pick<Site, 'latitude' | 'longitude' | 'elevation' | 'timeZone'>

/**
 * Hours of a mean year from monthly normals, for planning: the same every time.
 *
 * Temperature by a sine by day and an exponential fall by night between the day's means, humidity from the day's mean dew point, wind by a day curve, sun as
 * a clear day's shape scaled to the month. Rain by expectation: as many wet days as the months have, evenly spread, each with
 * the month's mean amount of a wet day; their spells step round the clock so that no hour is favoured.
 * Days without a change of weather: windy, hot and cold spells are not in it. Use `replayNormals` for risk.
 */
export function hoursFromNormals(
  normals: ClimateNormals,
  site: Place,
  from: string,
  days: number,
): readonly WeatherHour[] {
  assert(normals.months.length === 12, 'a climate has twelve months')
  const byDay = dayNormals(normals)
  const spells = spellsByExpectation(byDay, from, days, site.timeZone)
  return hoursOfDays(site, from, days, spells, byDay)
}

/** How far real days stray from the means. Defaults: mid-latitude, common practice, no source. */
export interface Unrest {
  /** Spread of a day's mean air temperature [K] and its tie to the day before. */
  readonly airSpread: number
  readonly airMemory: number
  /** Shape of the Weibull spread of daily wind. */
  readonly windShape: number
  /** Chance of a wet day after a wet one, over the mean chance. */
  readonly wetMemory: number
}

export const usualUnrest: Unrest = { airSpread: 3.2, airMemory: 0.65, windShape: 2.4, wetMemory: 1.6 }

/**
 * One possible course of the weather with these normals as its means, for risk.
 *
 * Wet days by a two-state chain, amounts exponential, mean air of a day as a first-order chain, wind Weibull by the day,
 * wet days under more cloud and with a smaller range, dry days the reverse, so that the means stay.
 *
 * @param random  numbers in [0, 1), e.g. from a seeded generator: the same seed gives the same weather
 * @param laid    days whose hours are wanted, if not all: they are the beginning of the same course
 */
export function replayNormals(
  normals: ClimateNormals,
  site: Place,
  from: string,
  days: number,
  random: () => number,
  unrest: Unrest = usualUnrest,
  laid: number = days,
): readonly WeatherHour[] {
  assert(normals.months.length === 12, 'a climate has twelve months')
  const means = dayNormals(normals)
  const spells = spellsByChance(means, from, days, site.timeZone, random, unrest.wetMemory)
  const wet = new Set(spells.map(spell => spell.date))
  const strayed = new Map<string, DayNormals>()
  let stray = 0
  for (let index = 0; index < days; index += 1) {
    const date = addDays(from, index)
    stray =
      unrest.airMemory * stray + Math.sqrt(1 - unrest.airMemory ** 2) * unrest.airSpread * normal(random)
    const breeze = weibullOfMeanOne(unrest.windShape, random)
    strayed.set(date, strayDay(means(date), stray, breeze, wet.has(date)))
  }
  return hoursOfDays(site, from, Math.min(laid, days), spells, date => strayed.get(date) ?? means(date))
}

function strayDay(mean: DayNormals, stray: number, breeze: number, wet: boolean): DayNormals {
  // Wet days have 0.55 of a mean day's sun and 0.7 of its range; dry days what keeps the means.
  const balance = (ofWet: number) =>
    wet ? ofWet : Math.min(1.35, (1 - mean.wetChance * ofWet) / Math.max(0.05, 1 - mean.wetChance))
  const middle = (mean.airMost + mean.airLeast) / 2 + stray
  const half = ((mean.airMost - mean.airLeast) / 2) * balance(0.7)
  const sunny = balance(0.55)
  const sky = mean.sky
  return {
    ...mean,
    airMost: middle + half,
    airLeast: middle - half,
    dewPoint: Math.min(mean.dewPoint + stray + (wet ? 1.5 : 0), middle),
    wind: mean.wind * breeze,
    sky:
      sky.kind === 'global'
        ? { kind: 'global', megajoulesPerDay: sky.megajoulesPerDay * sunny }
        : {
            kind: 'cloud',
            cover: Math.max(0, Math.min(1, wet ? Math.max(0.85, sky.cover) : sky.cover * 0.9)),
          },
  }
}

function hoursOfDays(
  site: Place,
  from: string,
  days: number,
  spells: readonly RainSpell[],
  byDay: (date: string) => DayNormals,
): readonly WeatherHour[] {
  const hours: WeatherHour[] = []
  let start = instantAt(from, 0, site.timeZone)
  // Whole days by their two midnights: asking the zone for every hour would take longer than the weather.
  for (let index = 0; index < days; index += 1) {
    const date = addDays(from, index)
    const end = instantAt(addDays(date, 1), 0, site.timeZone)
    const today = meanDay(site, date, byDay)
    const rain = spells.filter(spell => spell.date === date)
    for (; start < end; start += 3600) hours.push(meanHour(site, start, today, rainInHour(rain, start)))
  }
  return hours
}

interface MeanDay {
  readonly date: string
  readonly noon: Instant
  readonly rise: number
  /** True sunrise by the sun's clock: 0 on a polar day, 12 on a polar night. */
  readonly sunrise: number
  readonly share: number
  readonly yesterday: DayNormals
  readonly means: DayNormals
  readonly tomorrow: DayNormals
}

function meanDay(site: Place, date: string, byDay: (date: string) => DayNormals): MeanDay {
  const means = byDay(date)
  const noon = solarNoonNear(instantAt(date, 12 * 3600, site.timeZone), site.longitude)
  const sunrise = sunriseClock(noon, site.latitude)
  return {
    date,
    noon,
    rise: Math.max(3, Math.min(9, sunrise)),
    sunrise,
    share: clearShare(site, noon, means.sky),
    yesterday: byDay(addDays(date, -1)),
    means,
    tomorrow: byDay(addDays(date, 1)),
  }
}

/** By day between this day's extremes; by night from one day's sunset to the next one's least. */
function meanAir({ rise, yesterday, means, tomorrow }: MeanDay, clock: number): Celsius {
  const set = 24 - rise
  if (clock >= rise && clock <= set) return airByDay(means.airMost, means.airLeast, clock, rise)
  const [evening, least, since] =
    clock > set ? [means, tomorrow.airLeast, clock - set] : [yesterday, means.airLeast, clock + 24 - set]
  const atSunset = airByDay(evening.airMost, evening.airLeast, set, rise)
  return airByNight(atSunset, least, since / (2 * rise))
}

function meanHour(site: Place, start: Instant, day: MeanDay, rain: number): WeatherHour {
  // By the sun of this calendar day: under 0 or over 24 where the zone's clock runs far from it.
  const clock = 12 + (start + 1800 - day.noon) / 3600
  const air = meanAir(day, clock)
  const wind = windOfDay(day.means.wind, clock)
  // Half an hour beside the hour's middle, and the equation of time's drift within the day.
  const dark = 12 - day.sunrise + 0.6
  return {
    start,
    air,
    humidity: humidityFromDewPoint(air, Math.min(day.means.dewPoint, air)),
    wind,
    gust: gustOf(wind),
    rain,
    ...(Math.abs(clock - 12) > dark ? NIGHT : sunOfHour(site, start, day.share)),
    pressure: standardPressure(site.elevation),
    source: 'normals',
  }
}

const NIGHT = { global: 0, beam: 0, diffuse: 0 } as const

/** A standard normal number by Box and Muller. */
const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

/** A Weibull number whose mean is about one: scale 1/Γ(1 + 1/k), Γ by its value near 0.89. */
const weibullOfMeanOne = (shape: number, random: () => number): number =>
  (-Math.log(1 - random())) ** (1 / shape) / 0.8865
