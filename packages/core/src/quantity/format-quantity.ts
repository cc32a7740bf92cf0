import { assert } from '../result/index.js'
import { fromInside } from './convert-unit.js'
import type { Dimension } from './dimension.js'
import { findUnit } from './unit-symbol.js'
import { unitTable } from './unit-table.js'

export interface QuantityFormat {
  /** A unit of the dimension, instead of the usual one. */
  readonly unit?: string
  /** Rounding step in the shown unit. */
  readonly step?: number
  /** Feet and inches are rounded to 1/`denominator` inch; a power of two. */
  readonly denominator?: number
}

/**
 * A quantity as its reader writes it: `2.46 m`, `8' 0 7/8"`, `32 °C`, `89.6 °F`.
 * `value` is in the unit used inside. Reads back with `parseQuantity` to within half a step.
 */
export function formatQuantity(
  value: number,
  dimension: Dimension,
  units: 'metric' | 'imperial',
  format: QuantityFormat = {},
): string {
  assert(Number.isFinite(value), `a ${dimension} to show is ${value}`)
  if (dimension === 'length' && units === 'imperial' && !format.unit)
    return feetInches(value, format.denominator ?? 16)
  const symbol = format.unit ?? lengthUnit(value, dimension) ?? unitTable[dimension].shown[units]
  const unit = findUnit(symbol, dimension)
  assert(unit, `“${symbol}” is a unit of ${dimension}`)
  const step = format.step ?? (symbol === 'mm' ? 1 : unitTable[dimension].step[units])
  return `${rounded(fromInside(value, unit), step)}${symbol === '°' || symbol === '' ? '' : ' '}${symbol}`
}

/** Every digit that matters: reads back to the same number but for rounding in the last place. */
export function writeQuantity(value: number, dimension: Dimension, symbol: string): string {
  const unit = findUnit(symbol, dimension)
  assert(unit, `“${symbol}” is a unit of ${dimension}`)
  return `${Number(fromInside(value, unit).toPrecision(15))} ${symbol}`.trim()
}

/** Short lengths are read in millimetres on site; what rounds to a thousand of them is a metre. */
const lengthUnit = (value: number, dimension: Dimension): string | undefined =>
  dimension === 'length' && Math.abs(value) < 0.9995 ? 'mm' : undefined

function rounded(value: number, step: number): string {
  const decimals = Math.max(0, Math.min(12, Math.ceil(-Math.log10(step) - 1e-9)))
  const text = (Math.round(value / step) * step).toFixed(decimals)
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text
  return trimmed === '-0' ? '0' : trimmed
}

/** `8' 1 1/2"`: nearest 1/denominator inch, fraction in lowest terms. */
export function feetInches(metres: number, denominator: number): string {
  const parts = Math.round((Math.abs(metres) / 0.0254) * denominator)
  const feet = Math.floor(parts / (12 * denominator))
  const left = parts - feet * 12 * denominator
  const inches = Math.floor(left / denominator)
  const fraction = fractionText(left - inches * denominator, denominator)
  const sign = metres < 0 && parts > 0 ? '-' : ''
  if (feet === 0) return `${sign}${fraction ? `${inches > 0 ? `${inches} ` : ''}${fraction}` : inches}"`
  return `${sign}${feet}' ${inches}${fraction ? ` ${fraction}` : ''}"`
}

function fractionText(over: number, under: number): string {
  if (over === 0) return ''
  return over % 2 === 0 && under % 2 === 0 ? fractionText(over / 2, under / 2) : `${over}/${under}`
}
