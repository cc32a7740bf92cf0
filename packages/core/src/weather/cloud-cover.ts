import type { Share } from '../quantity/index.js'
import { cloudTransmission, haurwitzGlobal } from './clear-sky.js'
import type { WeatherHour } from './site-hour.js'

/**
 * Cloud cover of each hour, 0–1, from how much of the clear sky's sun arrives; nights keep the last daylight's.
 *
 * @param sineOfSun  sine of the sun's height in the middle of an hour, by its number
 *
 * Source   [KastenCzeplak1980] turned round, from memory.
 * Range    sun above 6°.
 * Scatter  ±0.25.
 * Assumes  before the first daylight, half cover.
 */
export function cloudsUnder(
  hours: readonly WeatherHour[],
  sineOfSun: (index: number) => number,
): Float64Array {
  let cover: Share = 0.5
  const overcast = 1 - cloudTransmission(1)
  return Float64Array.from(hours, ({ global }, index) => {
    const sine = sineOfSun(index)
    if (sine > 0.1) {
      const missing = Math.max(0, 1 - global / haurwitzGlobal(sine))
      cover = Math.min(1, (missing / overcast) ** (1 / 3.4))
    }
    return cover
  })
}
