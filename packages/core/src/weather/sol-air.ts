import type { Celsius } from '../quantity/index.js'

/**
 * Air temperature that would heat a surface as air and sun together do [°C]: t = to + a I/ho − ε ΔR/ho
 *
 * @param absorbed    a, share of the sun the surface keeps [1]
 * @param sun         on the surface [W/m²]
 * @param film        outside film [W/m²K], 17 in summer
 * @param longwave    ε ΔR: 0 upright, about 63 W/m² for a roof under a clear sky
 *
 * Source   [ASHRAE2017] ch. 18, from memory.
 * Range    steady hours.
 * Assumes  one film for air and radiation.
 */
export const solAir = (air: Celsius, absorbed: number, sun: number, film: number, longwave = 0): Celsius =>
  air + (absorbed * sun) / film - longwave / film
