import type { Celsius, Seconds } from '../quantity/index.js'

/** A time spent at one temperature. */
export interface Spell {
  readonly temperature: Celsius
  readonly duration: Seconds
}

const KELVIN = 273.15
const GAS = 8.314

/**
 * Temperature–time factor [°C·s]: M = Σ (T − T0) Δt, nothing below T0
 *
 * Source   [ASTM-C1074] (Nurse and Saul), from memory.
 * Range    0 to 40 °C; datum 0 °C for Type I, −10 °C in older practice.
 * Assumes  strength follows the sum, whatever the order: hot early curing lowers the late strength, which this does not see.
 */
export const nurseSaul = (spells: readonly Spell[], datum: Celsius): number =>
  spells.reduce((sum, { temperature, duration }) => sum + Math.max(0, temperature - datum) * duration, 0)

/**
 * Ageing over that at 20 °C with an activation that rises in the cold: Ea = 33.5 kJ/mol from 20 °C, 33.5 + 1.47 (20 − T) below
 *
 * Source   [FreieslebenHansen1977], from memory.
 * Range    −10 to 80 °C.
 * Assumes  Portland cement.
 */
export function ageFactorDanish(temperature: Celsius): number {
  const energy = 1000 * (temperature >= 20 ? 33.5 : 33.5 + 1.47 * (20 - temperature))
  return Math.exp(-(energy / GAS) * (1 / (temperature + KELVIN) - 1 / (20 + KELVIN)))
}

/**
 * Ageing over that at 20 °C: exp(13.65 − 4000/(273 + T))
 *
 * Source   [EN1992-1] eq. B.10, from memory.
 * Range    0 to 80 °C.
 * Assumes  273, not 273.15, as printed: 0.998 at 20 °C.
 */
export const ageFactorEurocode = (temperature: Celsius): number =>
  Math.exp(13.65 - 4000 / (273 + temperature))
