import { ageFactor, type MixModel } from '../mix/index.js'
import type { Celsius, Seconds, Share } from '../quantity/index.js'
import { type Hydration, hydrated } from './hydration.js'

/** What a wall asks of its mix in every cell and step, read from tables instead of by exponentials. */
export interface CureTables {
  readonly ageFactor: (temperature: Celsius) => number
  readonly hydrated: (age: Seconds) => Share
}

export const cureTables = (mix: MixModel, hydration: Hydration): CureTables => ({
  ageFactor: ageFactorTable(mix),
  hydrated: hydrationTable(hydration),
})

const COLDEST: Celsius = -30
const HOTTEST: Celsius = 95
const PER_KELVIN = 4

/**
 * `ageFactor` by straight lines between quarters of a kelvin: within h²/8·(Q/T²)² of it, 0.006 % at −30 °C for Q = 5000 K (closed form).
 * Outside −30 to 95 °C the exponential itself.
 */
function ageFactorTable(mix: MixModel): (temperature: Celsius) => number {
  const count = (HOTTEST - COLDEST) * PER_KELVIN
  const factors = Float64Array.from({ length: count + 1 }, (_, i) => ageFactor(COLDEST + i / PER_KELVIN, mix))
  return temperature => {
    const place = (temperature - COLDEST) * PER_KELVIN
    if (!(place >= 0 && place < count)) return ageFactor(temperature, mix)
    const index = Math.floor(place)
    return factors[index]! + (factors[index + 1]! - factors[index]!) * (place - index)
  }
}

const ROWS = 1024
const OLDEST: Seconds = 30 * 86400

/**
 * `hydrated` by straight lines between ages whose square roots are evenly spaced: dense where the heat comes, within 2e-5 of it (shown
 * in the tests). Heat is taken from differences of it, so that none is made or lost. Beyond 30 days the exponential itself.
 */
function hydrationTable(hydration: Hydration): (age: Seconds) => Share {
  const scale = ROWS / Math.sqrt(OLDEST)
  const shares = Float64Array.from({ length: ROWS + 1 }, (_, i) => hydrated(hydration, (i / scale) ** 2))
  return age => {
    const place = Math.sqrt(age) * scale
    if (!(place < ROWS)) return hydrated(hydration, age)
    const index = Math.floor(place)
    return shares[index]! + (shares[index + 1]! - shares[index]!) * (place - index)
  }
}
