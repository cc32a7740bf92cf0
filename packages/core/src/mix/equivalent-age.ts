import type { Celsius, Instant, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { MixModel } from './mix-model.js'

export type Arrhenius = Pick<MixModel, 'activation' | 'reference'>

const ZERO_CELSIUS = 273.15

/**
 * How much faster the mix ages at a temperature than at its reference: exp(−Q·(1/T − 1/Tr)), T in kelvin.
 *
 * @param temperature  of the material [°C]
 * @param mix          activation Q = Ea/R [K] and reference temperature [°C]
 *
 * Source   [FreieslebenHansen1977], form of ASTM C1074, from memory.
 * Range    0 … 40 °C for Q = 5000 K (Type I cement).
 * Assumes  one reaction governs fresh stiffening and later strength alike; check on site with tests at two temperatures.
 */
export function ageFactor(temperature: Celsius, { activation, reference }: Arrhenius): number {
  assert(temperature > -ZERO_CELSIUS, 'the material has a temperature above absolute zero')
  return Math.exp(-activation * (1 / (temperature + ZERO_CELSIUS) - 1 / (reference + ZERO_CELSIUS)))
}

/** Age at the reference temperature that `seconds` at `temperature` are worth. */
export const equivalentAge = (seconds: Seconds, temperature: Celsius, mix: Arrhenius): Seconds =>
  seconds * ageFactor(temperature, mix)

/** The temperature at which the mix ages `factor` times as fast as at its reference. */
export const temperatureOfFactor = (factor: number, { activation, reference }: Arrhenius): Celsius =>
  1 / (1 / (reference + ZERO_CELSIUS) - Math.log(factor) / activation) - ZERO_CELSIUS

/**
 * Moment at which material laid at `start` has reached an equivalent age, its temperature followed through the day
 * in steps of at most ten minutes; none if that takes longer than `horizon`.
 */
export function momentOfAge(
  start: Instant,
  age: Seconds,
  temperatureAt: (at: Instant) => Celsius,
  mix: Arrhenius,
  horizon: Seconds = 7 * 86_400,
): Instant | undefined {
  let [at, reached] = [start, 0]
  while (at < start + horizon) {
    const step = Math.min(600, start + horizon - at)
    const factor = ageFactor(temperatureAt(at + step / 2), mix)
    if (reached + step * factor >= age) return at + (age - reached) / factor
    reached += step * factor
    at += step
  }
  return undefined
}
