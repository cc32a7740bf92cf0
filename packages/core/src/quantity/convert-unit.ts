import type { Dimension, Unit } from './dimension.js'
import { findUnit, plainSymbol } from './unit-symbol.js'
import { unitTable } from './unit-table.js'

/** The inverse of a decimal scale as the whole number it is: 18 mm are 18/1000 = 0.018 m, but 18 · 0.001 is not. */
function wholeInverse(scale: number): number | undefined {
  const inverse = Math.round(1 / scale)
  return scale < 1 && Math.abs(inverse * scale - 1) < 1e-14 ? inverse : undefined
}

/** Value in the unit used inside from the value in a unit of the table. */
export function toInside(value: number, { scale, offset = 0 }: Pick<Unit, 'scale' | 'offset'>): number {
  const inverse = wholeInverse(scale)
  return (inverse === undefined ? value * scale : value / inverse) + offset
}

/** Value in a unit of the table from the value inside. */
export function fromInside(value: number, { scale, offset = 0 }: Pick<Unit, 'scale' | 'offset'>): number {
  const inverse = wholeInverse(scale)
  return inverse === undefined ? (value - offset) / scale : (value - offset) * inverse
}

/** Which dimensions have a unit with this symbol. */
export const dimensionsOf = (symbol: string): readonly Dimension[] =>
  (Object.keys(unitTable) as Dimension[]).filter(dimension => findUnit(symbol, dimension) !== undefined)

/**
 * The same quantity in another unit; nothing when no dimension has both units.
 * A unit outside the table converts only to itself. °C and K meet as temperatures, not as differences.
 */
export function convertUnit(value: number, from: string, to: string): number | undefined {
  if (plainSymbol(from) === plainSymbol(to)) return value
  for (const dimension of dimensionsOf(to)) {
    const source = findUnit(from, dimension)
    const target = findUnit(to, dimension)
    if (source && target) return fromInside(toInside(value, source), target)
  }
  return undefined
}
