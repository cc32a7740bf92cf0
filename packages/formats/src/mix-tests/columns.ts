import type { Dimension } from '@dawnlift/core/quantity'
import type { Problem } from '@dawnlift/core/result'
import { closestName } from '@dawnlift/core/result'

/** What a column of a test sheet holds. */
export interface Column {
  readonly name: ColumnName
  readonly index: number
  /** From the head: `age_min`, `age (min)`, `age [min]`; absent: every cell carries its own. */
  readonly unit?: string
  readonly head: string
}

export type ColumnName = QuantityName | 'kind' | 'unit' | 'note'
export type QuantityName =
  | 'age'
  | 'temperature'
  | 'value'
  | 'stress'
  | 'strength'
  | 'stiffness'
  | 'diameter'
  | 'volume'
  | 'resistance'
  | 'density'

/** Dimension of each quantity; `value` takes that of its row's kind. */
export const dimensions: Readonly<Record<Exclude<QuantityName, 'value'>, Dimension>> = {
  age: 'time',
  temperature: 'temperature',
  stress: 'pressure',
  strength: 'pressure',
  stiffness: 'pressure',
  diameter: 'length',
  volume: 'volume',
  resistance: 'pressure',
  density: 'density',
}

/** Other words that leads write over the same column. */
const otherWords: Readonly<Record<string, ColumnName>> = {
  test: 'kind',
  temp: 'temperature',
  yield: 'stress',
  spread: 'diameter',
  modulus: 'stiffness',
  penetration: 'resistance',
  notes: 'note',
  remark: 'note',
  date: 'note',
  batch: 'note',
  operator: 'note',
}

/** Units that a column head cannot write with its marks. */
const plainUnits: Readonly<Record<string, string>> = {
  C: '°C',
  F: '°F',
  degC: '°C',
  degF: '°F',
  kgm3: 'kg/m³',
  kg_m3: 'kg/m³',
  lbft3: 'lb/ft³',
  gcm3: 'g/cm³',
  cm3: 'cm³',
}

/** Reads the heads of a sheet; unknown and doubled ones are problems, a doubled unit too. */
export function readColumns(
  heads: readonly string[],
  at: string,
): { columns: Column[]; problems: Problem[] } {
  const columns: Column[] = []
  const problems: Problem[] = []
  for (const [index, head] of heads.entries()) {
    if (head === '') continue
    const { word, unit } = headParts(head)
    const name = nameOf(word)
    if (!name) problems.push(unknownColumn(head, word, at))
    else if (name !== 'note' && columns.some(column => column.name === name))
      problems.push(doubled(head, columns.find(column => column.name === name)!.head, at))
    else columns.push({ name, index, head, ...(unit ? { unit } : {}) })
  }
  return { columns, problems }
}

/** `age_min`, `age (min)`, `age [min]` and `age` alone. */
export function headParts(head: string): { word: string; unit: string | undefined } {
  const found = /^([a-z]+)(?:[\s_]*[([]\s*(.+?)\s*[)\]]|[\s_]+(.+))?$/i.exec(head.trim())
  const unit = found?.[2] ?? found?.[3]
  return { word: (found?.[1] ?? head).toLowerCase(), unit: unit && (plainUnits[unit] ?? unit) }
}

const names: readonly ColumnName[] = [
  ...(Object.keys(dimensions) as QuantityName[]),
  'value',
  'kind',
  'unit',
  'note',
]

const nameOf = (word: string): ColumnName | undefined => names.find(name => name === word) ?? otherWords[word]

function unknownColumn(head: string, word: string, at: string): Problem {
  const near = closestName(word, [...names, ...Object.keys(otherWords)])
  const hint = near ? `did you mean “${near}”?` : `known are ${names.join(', ')}`
  return { code: 'mix-tests/unknown-column', at, say: `Column “${head}” is not one of a test sheet; ${hint}` }
}

const doubled = (head: string, other: string, at: string): Problem => ({
  code: 'mix-tests/doubled-column',
  at,
  say: `Columns “${other}” and “${head}” say the same thing, perhaps in two units; keep one of them.`,
})
