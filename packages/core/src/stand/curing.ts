import type { Pascals, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'

/** Young's modulus of the resting material against its age. */
export type Curing =
  | { readonly kind: 'constant'; readonly start: Pascals }
  /** E = E₀(1 + ξt) */
  | { readonly kind: 'linear'; readonly start: Pascals; readonly rate: number }
  /** E = E∞ + (E₀ − E∞)·exp(−ξt) */
  | { readonly kind: 'exponential'; readonly start: Pascals; readonly end: Pascals; readonly rate: number }
  /** E = E₀(1 + ξt + ζt²) */
  | { readonly kind: 'quadratic'; readonly start: Pascals; readonly rate: number; readonly bend: number }
  /** Straight between the rows, constant outside them; ages rise. */
  | { readonly kind: 'table'; readonly rows: readonly { readonly age: Seconds; readonly modulus: Pascals }[] }

/**
 * Young's modulus at an age, in Pa.
 *
 * @param curing  constant, linear, exponential, quadratic, or tabulated
 * @param age     since the material was laid [s]
 *
 * Source   [Suiker2018] linear and exponential, [WolfsSuiker2019] quadratic, second-hand.
 * Range    ages that were tested.
 * Assumes  undisturbed rest.
 */
export function curedModulus(curing: Curing, age: Seconds): Pascals {
  assert(age >= 0 && Number.isFinite(age), `material has an age (found ${age} s)`)
  switch (curing.kind) {
    case 'constant':
      return curing.start
    case 'linear':
      return curing.start * (1 + curing.rate * age)
    case 'exponential':
      return curing.end + (curing.start - curing.end) * Math.exp(-curing.rate * age)
    case 'quadratic':
      return curing.start * (1 + curing.rate * age + curing.bend * age ** 2)
    case 'table':
      return tabulated(curing.rows, age)
  }
}

function tabulated(
  rows: readonly { readonly age: Seconds; readonly modulus: Pascals }[],
  age: Seconds,
): Pascals {
  assert(rows.length > 0, 'a table has rows')
  const next = rows.findIndex(row => row.age >= age)
  if (next < 0) return rows[rows.length - 1]!.modulus
  if (next === 0) return rows[0]!.modulus
  const [a, b] = [rows[next - 1]!, rows[next]!]
  return a.modulus + ((b.modulus - a.modulus) * (age - a.age)) / (b.age - a.age)
}
