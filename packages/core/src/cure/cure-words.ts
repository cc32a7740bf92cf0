import type { Units } from '../limit/index.js'
import type { Celsius, Pascals } from '../quantity/index.js'
import { formatQuantity } from '../quantity/index.js'

/** Numbers in the words of a cure, as the site reads them. */
export interface CureWords {
  /** Whole degrees; `finer` for where a tenth matters. */
  readonly temperature: (value: Celsius, finer?: boolean) => string
  /** Of two temperatures. */
  readonly difference: (kelvin: number) => string
  readonly strength: (value: Pascals) => string
  readonly stress: (value: Pascals) => string
  /** Rounded up: too much water does no harm. */
  readonly water: (litres: number) => string
  /** kg/m²h */
  readonly drying: (rate: number) => string
  readonly power: (watts: number) => string
}

export const cureWords = (units: Units = 'metric'): CureWords => ({
  temperature: (value, finer = false) =>
    formatQuantity(value, 'temperature', units, { step: finer ? 0.1 : 1 }),
  difference: kelvin => formatQuantity(kelvin, 'temperatureDifference', units, { step: 1 }),
  strength: value =>
    units === 'metric'
      ? `${(value / 1e6).toFixed(1)} MPa`
      : formatQuantity(value, 'pressure', units, { step: 10 }),
  stress: value => formatQuantity(value, 'pressure', units, { step: units === 'metric' ? 1 : 0.1 }),
  water: litres =>
    units === 'metric' ? `${Math.ceil(litres)} L` : `${(Math.ceil(litres * 2.64172) / 10).toFixed(1)} gal`,
  drying: rate =>
    units === 'metric' ? `${rate.toFixed(2)} kg/m²h` : `${(rate * 0.204816).toFixed(2)} lb/ft²h`,
  power: watts =>
    units === 'metric'
      ? `${(watts / 1000).toFixed(1)} kW`
      : `${(Math.ceil(watts * 0.00341214 * 10) / 10).toFixed(1)} thousand BTU/h`,
})
