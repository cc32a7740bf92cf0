import type { Celsius } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import type { WallHeatInput } from './wall-case.js'
import { wallHeat } from './wall-heat.js'
import { peakOf, steepestOf, type WallHeat } from './wall-trace.js'

/** Hotter than this, young concrete may crack years later (delayed ettringite). Source [ACI201-2016], from memory. */
export const PEAK_MOST: Celsius = 70
/** Curing water may be this much colder than the wall. Source [ACI308-2016], from memory. */
export const WATER_SHOCK: Celsius = 11
/** From this, plastic in the sun is warned of. Common practice, no source. */
export const PLASTIC_WARM: Celsius = 50

/** Whether the wall gets too hot inside. */
export function checkHeat(id: string, heat: WallHeat): Finding {
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
    say: `Hottest ${peak.temperature.toFixed(0)} °C, ${((peak.at - heat.start) / 3600).toFixed(0)} h after the lift; up to ${steep.difference.toFixed(0)} K across the wall. Keep it under ${PEAK_MOST} °C.`,
  }
}

/** Whether cold hose water would shock a warm wall. */
export function checkWater(id: string, heat: WallHeat, water: Celsius): readonly Finding[] {
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
      say: `The water is ${(warmest - water).toFixed(0)} K colder than the wall at the warmest wetting: let it stand in the sun or wet earlier; at most ${WATER_SHOCK} K.`,
    },
  ]
}

/** What clear plastic instead would do to this lift in its sun; said only where it is worth a warning. */
export function checkPlastic(id: string, input: WallHeatInput): readonly Finding[] {
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
      say: `Under clear plastic this lift would reach ${peak.temperature.toFixed(0)} °C in its sun: use wet burlap or a white sheet.`,
    },
  ]
}
