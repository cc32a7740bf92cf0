import type { MixTest, MixTestKind } from '@dawnlift/core/mix'
import type { Dimension } from '@dawnlift/core/quantity'
import type { Problem, Result } from '@dawnlift/core/result'
import { closestName, failure, success } from '@dawnlift/core/result'
import { readCell } from './cell.js'
import { type Column, dimensions, type QuantityName, readColumns } from './columns.js'
import { type Row, sheetRows } from './rows.js'

type Field = Exclude<QuantityName, 'value' | 'age' | 'temperature'>

/** What each kind of test measures: the first field may stand in the `value` column. */
const fields: Readonly<
  Record<MixTestKind, { readonly needed: readonly Field[]; readonly free: readonly Field[] }>
> = {
  vane: { needed: ['stress'], free: [] },
  penetrometer: { needed: ['stress'], free: [] },
  spread: { needed: ['diameter', 'volume'], free: [] },
  compression: { needed: [], free: ['strength', 'stiffness'] },
  set: { needed: ['resistance'], free: [] },
  density: { needed: ['density'], free: [] },
  cylinder: { needed: ['strength'], free: [] },
  cube: { needed: ['strength'], free: [] },
}

const kinds = Object.keys(fields) as MixTestKind[]

interface Sheet {
  readonly file: string
  readonly columns: readonly Column[]
}

/**
 * Reads a sheet of mix tests, one test a line. Heads: `kind`, `age`, `temperature`, and either the quantity by name
 * (`stress`, `strength`, `stiffness`, `diameter`, `volume`, `resistance`, `density`) or `value`. Units stand in the head
 * (`age_min`, `stress (kPa)`), in a `unit` column for `value`, or in the cell (`35 min`); a number without one is a
 * problem. All problems of the sheet come at once, with their lines.
 */
export function readMixTests(text: string, file = 'tests.csv'): Result<readonly MixTest[]> {
  const [heads, ...rows] = sheetRows(text)
  if (!heads) return failure([empty(file)])
  const { columns, problems } = readColumns(heads.cells, `${file}:${heads.line}`)
  const missing = ['kind', 'age', 'temperature'].filter(name => !columns.some(column => column.name === name))
  problems.push(...missing.map(name => noColumn(name, `${file}:${heads.line}`)))
  if (problems.length > 0) return failure(problems)
  if (rows.length === 0) return failure([empty(file)])
  const read = rows.map(row => readTest(row, { file, columns }))
  const bad = read.flatMap(test => (test.ok ? [] : test.problems))
  return bad.length > 0 ? failure(bad) : success(read.flatMap(test => (test.ok ? [test.value] : [])))
}

function readTest(row: Row, sheet: Sheet): Result<MixTest> {
  const at = `${sheet.file}:${row.line}`
  const written = cellOf(row, sheet, 'kind').toLowerCase()
  const kind = kinds.find(each => each === written)
  if (!kind) return failure([unknownKind(written, at)])
  const { needed, free } = fields[kind]
  const quantities: readonly QuantityName[] = ['age', 'temperature', ...needed, ...free]
  const values: Partial<Record<QuantityName, number>> = {}
  const problems: Problem[] = strayCells(row, sheet, kind, quantities, at)
  for (const name of quantities) {
    const found = readQuantity(row, sheet, name, name === (needed[0] ?? free[0]))
    if (found === undefined) {
      if (!free.some(each => each === name)) problems.push(noValue(name, kind, at))
    } else if (found.ok) values[name] = found.value
    else problems.push(...found.problems.map(problem => ({ ...problem, at, say: `${name}: ${problem.say}` })))
  }
  // The loop above left no needed field out, so that the object is a test of its kind.
  return problems.length > 0 ? failure(problems) : success({ kind, at, ...values } as MixTest)
}

/** The quantity in its own column, or in `value` where it is the main one of its kind. */
function readQuantity(
  row: Row,
  sheet: Sheet,
  name: QuantityName,
  isMain: boolean,
): Result<number> | undefined {
  const own = quantityIn(row, sheet, name, dimensionOf(name), undefined)
  if (own || !isMain) return own
  return quantityIn(row, sheet, 'value', dimensionOf(name), cellOf(row, sheet, 'unit'))
}

function quantityIn(
  row: Row,
  sheet: Sheet,
  name: QuantityName,
  dimension: Dimension,
  rowUnit: string | undefined,
): Result<number> | undefined {
  const column = sheet.columns.find(each => each.name === name)
  const cell = column ? (row.cells[column.index] ?? '') : ''
  if (!column || cell === '') return undefined
  return readCell(cell, rowUnit || column.unit, dimension)
}

const dimensionOf = (name: QuantityName): Dimension => dimensions[name as keyof typeof dimensions]

function cellOf(row: Row, sheet: Sheet, name: 'kind' | 'unit'): string {
  const column = sheet.columns.find(each => each.name === name)
  return column ? (row.cells[column.index] ?? '') : ''
}

/** A number that the row's kind has no use for is more likely in the wrong column than superfluous. */
function strayCells(
  row: Row,
  sheet: Sheet,
  kind: MixTestKind,
  used: readonly QuantityName[],
  at: string,
): Problem[] {
  return sheet.columns
    .filter(({ name }) => name in dimensions && !used.some(each => each === name))
    .filter(({ index }) => (row.cells[index] ?? '') !== '')
    .map(({ head, index }) => ({
      code: 'mix-tests/stray-value',
      at,
      say: `A ${kind} test has no “${head}”, yet ${row.cells[index]} stands there; move it to its column or change the kind.`,
    }))
}

const empty = (file: string): Problem => ({
  code: 'mix-tests/empty',
  at: file,
  say: 'The sheet has no tests. Write a line of heads (kind, age_min, temperature_C, value, unit) and one line a test.',
})

const noColumn = (name: string, at: string): Problem => ({
  code: 'mix-tests/missing-column',
  at,
  say: `There is no column “${name}”; every test needs its kind, age and temperature.`,
})

function unknownKind(written: string, at: string): Problem {
  const near = closestName(written, kinds)
  const hint = near ? `did you mean “${near}”?` : `known are ${kinds.join(', ')}`
  return { code: 'mix-tests/unknown-kind', at, say: `“${written}” is not a kind of test; ${hint}` }
}

const noValue = (name: QuantityName, kind: MixTestKind, at: string): Problem => ({
  code: 'mix-tests/missing-value',
  at,
  say: `The ${kind} test has no ${name}; write it in a column “${name}” with its unit.`,
})
