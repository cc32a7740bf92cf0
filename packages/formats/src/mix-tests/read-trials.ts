import type { Dimension } from '@dawnlift/core/quantity'
import type { Problem, Result } from '@dawnlift/core/result'
import { closestName, failure, success } from '@dawnlift/core/result'
import type { BeadTrial, CornerTrial, LagTrial, PumpTrial, TrialsSoFar } from '@dawnlift/core/trial'
import { readCell } from './cell.js'
import { headParts } from './columns.js'
import { type Row, sheetRows } from './rows.js'

type TrialKind = 'pump' | 'bead' | 'start' | 'stop' | 'corner'

/** Columns of a trial sheet. `setting` is the bare number the controller sends. */
const dimensions: Readonly<Record<string, Dimension | 'bare' | 'words'>> = {
  kind: 'words',
  setting: 'bare',
  caught: 'mass',
  during: 'time',
  flow: 'flow',
  speed: 'speed',
  width: 'length',
  height: 'length',
  distance: 'length',
  straightspeed: 'speed',
  straightwidth: 'length',
  note: 'words',
}

/** What each kind of trial needs. */
const needed: Readonly<Record<TrialKind, readonly string[]>> = {
  pump: ['setting', 'caught', 'during'],
  bead: ['flow', 'speed', 'width', 'height'],
  start: ['speed', 'distance'],
  stop: ['speed', 'distance'],
  corner: ['speed', 'width', 'straightspeed', 'straightwidth'],
}

interface Column {
  readonly name: string
  readonly index: number
  readonly unit: string | undefined
}

interface ReadTrial {
  readonly kind: TrialKind
  readonly at: string
  readonly values: Readonly<Record<string, number>>
}

/**
 * Reads a sheet of machine and pump trials, one a line: `kind` (pump, bead, start, stop, corner) and the columns that
 * kind needs, with units in the heads (`caught_kg`, `speed (mm/s)`) or in the cells. All problems come with their lines.
 */
export function readTrials(text: string, file = 'trials.csv'): Result<TrialsSoFar> {
  const [heads, ...rows] = sheetRows(text)
  if (!heads || rows.length === 0) return failure([empty(file)])
  const columns = heads.cells.map((head, index): Column => {
    const { word, unit } = headParts(head)
    return { name: word, index, unit }
  })
  const strange = columns.filter(({ name }) => name !== '' && !(name in dimensions))
  const at = `${file}:${heads.line}`
  if (strange.length > 0)
    return failure(strange.map(({ name }) => unknown('column', name, Object.keys(dimensions), at)))
  const read = rows.map(row => readTrial(row, columns, file))
  const problems = read.flatMap(trial => (trial.ok ? [] : trial.problems))
  if (problems.length > 0) return failure(problems)
  return success(sorted(read.flatMap(trial => (trial.ok ? [trial.value] : []))))
}

function readTrial(row: Row, columns: readonly Column[], file: string): Result<ReadTrial> {
  const at = `${file}:${row.line}`
  const cellOf = (name: string) => {
    const column = columns.find(each => each.name === name)
    return { unit: column?.unit, cell: column ? (row.cells[column.index] ?? '') : '' }
  }
  const written = cellOf('kind').cell.toLowerCase()
  const kind = (Object.keys(needed) as TrialKind[]).find(each => each === written)
  if (!kind) return failure([unknown('kind', written, Object.keys(needed), at)])
  const values: Record<string, number> = {}
  const problems: Problem[] = []
  for (const name of needed[kind]) {
    const { cell, unit } = cellOf(name)
    const found = cell === '' ? failure([missing(name, kind)]) : readValue(cell, unit, dimensions[name]!)
    if (found.ok) values[name] = found.value
    else problems.push(...found.problems.map(problem => ({ ...problem, at, say: `${name}: ${problem.say}` })))
  }
  return problems.length > 0 ? failure(problems) : success({ kind, at, values })
}

function readValue(
  cell: string,
  unit: string | undefined,
  dimension: Dimension | 'bare' | 'words',
): Result<number> {
  if (dimension !== 'bare' && dimension !== 'words') return readCell(cell, unit, dimension)
  const value = Number(cell.replace(',', '.'))
  return Number.isFinite(value)
    ? success(value)
    : failure([{ code: 'trials/not-a-number', at: '', say: `“${cell}” is not a number.` }])
}

/** Every value a kind needs was read, or there would have been a problem. */
function sorted(trials: readonly ReadTrial[]): TrialsSoFar {
  const of = (...kinds: readonly TrialKind[]) => trials.filter(({ kind }) => kinds.includes(kind))
  return {
    pump: of('pump').map(({ at, values }) => ({ at, ...values }) as unknown as PumpTrial),
    bead: of('bead').map(({ at, values }) => ({ at, ...values }) as unknown as BeadTrial),
    lag: of('start', 'stop').map(({ kind, at, values }) => ({ kind, at, ...values }) as unknown as LagTrial),
    corner: of('corner').map(
      ({ at, values }): CornerTrial => ({
        at,
        cornerSpeed: values.speed!,
        cornerWidth: values.width!,
        straightSpeed: values.straightspeed!,
        straightWidth: values.straightwidth!,
      }),
    ),
  }
}

const empty = (file: string): Problem => ({
  code: 'trials/empty',
  at: file,
  say: 'The sheet has no trials. Write a line of heads (kind, setting, caught_kg, during_s, …) and one line a trial.',
})

function unknown(what: 'column' | 'kind', written: string, known: readonly string[], at: string): Problem {
  const near = closestName(written, known)
  const hint = near ? `did you mean “${near}”?` : `known are ${known.join(', ')}`
  return {
    code: `trials/unknown-${what}`,
    at,
    say: `“${written}” is not a ${what} of a trial sheet; ${hint}`,
  }
}

const missing = (name: string, kind: TrialKind): Problem => ({
  code: 'trials/missing-value',
  at: '',
  say: `a ${kind} trial needs it; write it in a column “${name}” with its unit.`,
})
