import type { Dimension } from './dimension.js'
import { findUnit, plainSymbol } from './unit-symbol.js'
import { unitTable } from './unit-table.js'

/** Value in a unit of the table from the value inside. */
export const fromInside = (
  value: number,
  unit: { readonly scale: number; readonly offset?: number },
): number => (value - (unit.offset ?? 0)) / unit.scale

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
    if (source && target) return fromInside(value * source.scale + (source.offset ?? 0), target)
  }
  return undefined
}
