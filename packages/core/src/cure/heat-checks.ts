import type { Celsius } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { cureWords } from './cure-words.js'
import type { WallHeatInput } from './wall-case.js'
import { wallHeat } from './wall-heat.js'
import { peakOf, steepestOf, type WallHeat } from './wall-trace.js'

/** Hotter than this, young concrete may crack years later (delayed ettringite). Source [ACI201-2016], from memory. */
export const PEAK_MOST: Celsius = 70
/** Curing water may be this much colder than the wall. Source [ACI308-2016], from memory. */
export const WATER_SHOCK: Celsius = 11
/** From this, plastic in the sun is warned of. Common practice, no source. */
export const PLASTIC_WARM: Celsius = 50

/** What is not known of sheet and gap moves its temperature so much either way [K]. Derived: see the tests. */
export const PLASTIC_SCATTER = 10

/** Whether the wall gets too hot inside. */
export function checkHeat(id: string, heat: WallHeat, words = cureWords()): Finding {
  const peak = peakOf(heat)
  const steep = steepestOf(heat)
  return {
    check: 'cure-heat',
    at: id,
    demand: peak.temperature,
    capacity: PEAK_MOST,
    unit: '°C',
    source: 'ACI201-2016',
    verdict: peak.temperature > PEAK_MOST ? 'fail' : peak.temperature > PEAK_MOST - 8 ? 'warn' : 'pass',
    say: `Hottest ${words.temperature(peak.temperature)}, ${((peak.at - heat.start) / 3600).toFixed(0)} h after the lift; up to ${words.difference(steep.difference)} across the wall. Keep it under ${words.temperature(PEAK_MOST)}.`,
  }
}

/** Whether cold hose water would shock a warm wall. */
export function checkWater(
  id: string,
  heat: WallHeat,
  water: Celsius,
  words = cureWords(),
): readonly Finding[] {
  const { at, left, right } = heat.trace
  const warmest = heat.rewettings.reduce((most, wetting) => {
    const index = at.findIndex(moment => moment >= wetting.at)
    return index < 0 ? most : Math.max(most, wetting.side === 'left' ? left[index]! : right[index]!)
  }, Number.NEGATIVE_INFINITY)
  if (warmest - water <= WATER_SHOCK) return []
  return [
    {
      check: 'cure-water',
      at: id,
      demand: warmest - water,
      capacity: WATER_SHOCK,
      unit: 'K',
      source: 'ACI308-2016',
      verdict: 'warn',
      say: `The water is ${words.difference(warmest - water)} colder than the wall at the warmest wetting: let it stand in the sun or wet earlier; at most ${words.difference(WATER_SHOCK)}.`,
    },
  ]
}

/**
 * What clear plastic instead would do to this lift in its sun; said only where it is worth a warning.
 *
 * Source   the wall's own heat balance; common practice has about 60 °C.
 * Scatter  ±10 K (`PLASTIC_SCATTER`), of a wall still damp.
 */
export function checkPlastic(id: string, input: WallHeatInput, words = cureWords()): readonly Finding[] {
  const from = input.covers[0]?.from ?? input.start
  // The sheet itself is known to ±10 K: a quarter of an hour is fine enough.
  const heat = wallHeat({
    ...input,
    covers: [{ from, cover: 'clear-plastic' }],
    duration: 2 * 86400,
    step: 900,
  })
  const peak = peakOf(heat)
  if (peak.temperature < PLASTIC_WARM) return []
  return [
    {
      check: 'cure-plastic',
      at: id,
      demand: peak.temperature,
      capacity: PLASTIC_WARM,
      unit: '°C',
      source: 'common practice, no source',
      verdict: 'warn',
      say: `Under clear plastic this lift would reach ${words.temperature(peak.temperature)} in its sun, give or take ${words.difference(PLASTIC_SCATTER)}: use wet burlap or a white sheet.`,
    },
  ]
}
