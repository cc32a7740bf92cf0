import type { Dimension, Unit } from './dimension.js'
import { unitTable } from './unit-table.js'

const superscripts: Readonly<Record<string, string>> = { '²': '2', '³': '3', '⁻': '-', '¹': '1' }
const marks: Readonly<Record<string, string>> = { '′': "'", '’': "'", '″': '"', '”': '"', '“': '"' }

/** One spelling for comparison: `Pa.s`, `Pa s` and `Pa·s`; `m²`, `m2` and `m^2`; `′` and `'`. */
export const plainSymbol = (symbol: string): string =>
  symbol
    .trim()
    .replace(/[²³⁻¹]/g, mark => superscripts[mark] ?? mark)
    .replace(/[′’″”“]/g, mark => marks[mark] ?? mark)
    .replace(/\^/g, '')
    .replace(/\s*[·.*×⋅]\s*/g, '·')
    .replace(/\s*\/\s*/g, '/')
    .replace(/\s+per\s+/g, '/')
    .replace(/\s+/g, ' ')

const indexes = new Map<Dimension, ReadonlyMap<string, Unit>>()

function symbolsOf(dimension: Dimension): ReadonlyMap<string, Unit> {
  const known = indexes.get(dimension)
  if (known) return known
  const made = new Map(
    unitTable[dimension].units.flatMap(each => each.names.map(name => [plainSymbol(name), each] as const)),
  )
  indexes.set(dimension, made)
  return made
}

/** The unit of this dimension with that symbol, if there is one. Capitals count: `MPa` is not `mPa`. */
export const findUnit = (symbol: string, dimension: Dimension): Unit | undefined =>
  symbolsOf(dimension).get(plainSymbol(symbol))

/** The symbols of a dimension as we write them, for messages. */
export const unitNames = (dimension: Dimension): readonly string[] =>
  unitTable[dimension].units.map(each => each.names[0]).filter(name => name !== '')

/** `pressureRate` → `pressure rate`, for messages. */
export const dimensionWords = (dimension: Dimension): string =>
  dimension.replace(/[A-Z]/g, letter => ` ${letter.toLowerCase()}`)
