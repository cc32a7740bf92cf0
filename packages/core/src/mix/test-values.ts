import { sayQuantity, type Units } from '../limit/index.js'
import type { MixTest } from './mix-test.js'

/** What a test measures, besides its age and temperature. */
export type Quantity =
  | 'age'
  | 'temperature'
  | 'stress'
  | 'diameter'
  | 'volume'
  | 'strength'
  | 'stiffness'
  | 'resistance'
  | 'density'

export function valuesOf(test: MixTest): readonly (readonly [Quantity, number | undefined])[] {
  switch (test.kind) {
    case 'vane':
    case 'penetrometer':
      return [['stress', test.stress]]
    case 'spread':
      return [
        ['diameter', test.diameter],
        ['volume', test.volume],
      ]
    case 'compression':
      return [
        ['strength', test.strength],
        ['stiffness', test.stiffness],
      ]
    case 'set':
      return [['resistance', test.resistance]]
    case 'density':
      return [['density', test.density]]
    case 'cylinder':
    case 'cube':
      return [['strength', test.strength]]
  }
}

/** A value of a test as its writer would have it, however small, large or wrong. */
export function sayTestValue(quantity: Quantity, value: number, units: Units): string {
  if (!Number.isFinite(value)) return 'no number'
  switch (quantity) {
    case 'age':
      return sayAge(value)
    case 'temperature':
      return sayQuantity(value, '°C', units)
    case 'diameter':
      return sayQuantity(1000 * value, 'mm', units)
    case 'volume':
      return units === 'metric' ? `${short(value * 1e6)} mL` : `${short(value * 61_023.744)} in³`
    case 'density':
      return sayQuantity(value, 'kg/m³', units)
    default:
      return sayPressure(value, units)
  }
}

function sayAge(seconds: number): string {
  const size = Math.abs(seconds)
  if (size >= 2 * 86_400) return `${short(seconds / 86_400)} days`
  return size >= 5400 ? `${short(seconds / 3600)} h` : `${short(seconds / 60)} min`
}

function sayPressure(pascals: number, units: Units): string {
  if (units === 'imperial') return `${short(pascals / 6894.757)} psi`
  const size = Math.abs(pascals)
  if (size >= 1e9) return `${short(pascals / 1e9)} GPa`
  if (size >= 1e6) return `${short(pascals / 1e6)} MPa`
  return size >= 1000 ? `${short(pascals / 1000)} kPa` : `${short(pascals)} Pa`
}

const short = (value: number): string => String(Number(value.toPrecision(3)))
