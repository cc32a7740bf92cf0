import type { Celsius, Instant, Metres } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { type CoverKind, covers } from './cover.js'
import { cureWords } from './cure-words.js'
import { coldestOf, type WallHeat } from './wall-trace.js'
import { buildingFilm, type WallWeather, windOfFilm } from './wall-weather.js'

/** Air at or below this within the protection period makes it cold weather. Source [ACI306-2016], read second-hand. */
export const COLD_AIR: Celsius = 4

/**
 * Least temperature a placed section is kept at while protected [°C], by its thickness.
 *
 *   T = 13 under 0.305 m, 10 under 0.914 m, 7 under 1.829 m, 5 from there (one, three and six feet)
 *
 * Source   [ACI306-2016], from memory.
 * Range    any section.
 * Assumes  ordinary cement.
 */
export const leastKept = (thickness: Metres): Celsius =>
  thickness < 0.305 ? 13 : thickness < 0.914 ? 10 : thickness < 1.829 ? 7 : 5

/** Largest cooling in the first day after protection ends [K]: 28, 22, 17, 11 by the same thicknesses. Source [ACI306-2016], from memory; Range any section; Assumes ordinary cement. */
export const coolingMost = (thickness: Metres): Celsius =>
  thickness < 0.305 ? 28 : thickness < 0.914 ? 22 : thickness < 1.829 ? 17 : 11

/** Whether any hour between two moments is cold weather. */
export function isColdWeather(weather: WallWeather, from: Instant, until: Instant): boolean {
  for (let index = 0; index < weather.count; index += 1) {
    const at = weather.first + index * 3600
    if (at >= from && at < until && weather.air[index]! <= COLD_AIR) return true
  }
  return false
}

/**
 * Heat to put into a covered wall so that its faces stay at a temperature, in the worst hour, per m² of face [W/m²].
 *
 *   q = (T − Ta) h/(1 + h R), h = 4 + 4 v + 5 W/m²K of radiation, no sun
 *
 * Source   closed form of the steady balance; film [ISO6946-2017].
 * Range    covered faces.
 * Assumes  the wall's own heat of hydration is spent: the safe side after the first day.
 */
export function heatingNeed(
  weather: WallWeather,
  cover: CoverKind,
  kept: Celsius,
  from: Instant,
  until: Instant,
): number {
  let most = 0
  for (let index = 0; index < weather.count; index += 1) {
    const at = weather.first + index * 3600
    if (at < from || at >= until) continue
    const h = buildingFilm(windOfFilm(weather.film[index]!)) + 5
    most = Math.max(most, ((kept - weather.air[index]!) * h) / (1 + h * covers[cover].resistance))
  }
  return most
}

/** Whether the wall freezes before it can stand it. */
export function checkFrost(
  id: string,
  heat: WallHeat,
  frostSafe: Instant | undefined,
  words = cureWords(),
): Finding {
  const until = frostSafe ?? heat.until
  const coldest = coldestOf(heat, until)
  const hours = (until - heat.start) / 3600
  return {
    check: 'frost',
    at: id,
    demand: coldest.temperature,
    capacity: 0,
    unit: '°C',
    source: 'ACI306-2016',
    verdict: coldest.temperature <= 0 ? 'fail' : frostSafe === undefined ? 'warn' : 'pass',
    say:
      coldest.temperature <= 0
        ? `The coldest part falls to ${words.temperature(coldest.temperature, true)} before it has ${words.strength(3.5e6)}: insulate or heat it, or do not print.`
        : `Protect ${hours.toFixed(0)} h until ${words.strength(3.5e6)}; the coldest part stays at ${words.temperature(coldest.temperature, true)}.`,
  }
}

/**
 * Whether uncovering lets the wall cool too fast: from its own temperature to the coldest air of the next day.
 *
 * Source   [ACI306-2016], from memory; a thin wall follows the air within hours, so the air stands for it.
 */
export function checkCooling(
  id: string,
  heat: WallHeat,
  weather: WallWeather,
  uncover: Instant,
  thickness: Metres,
  words = cureWords(),
): readonly Finding[] {
  const { at, most } = heat.trace
  const index = at.findIndex(moment => moment >= uncover)
  if (index < 0) return []
  const coldest = weather.air.reduce((least, air, hour) => {
    const start = weather.first + hour * 3600
    return start >= uncover && start < uncover + 86400 ? Math.min(least, air) : least
  }, Number.POSITIVE_INFINITY)
  const [fall, allowed] = [most[index]! - coldest, coolingMost(thickness)]
  if (fall <= allowed) return []
  return [
    {
      check: 'cure-cooling',
      at: id,
      demand: fall,
      capacity: allowed,
      unit: 'K',
      source: 'ACI306-2016',
      verdict: 'warn',
      say: `Uncovered, the wall would cool by ${words.difference(fall)} within a day; at most ${words.difference(allowed)}. Loosen the cover first and take it off a day later.`,
    },
  ]
}
