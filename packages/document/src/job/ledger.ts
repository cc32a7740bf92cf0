import { type Dimension, formatQuantity } from '@dawnlift/core/quantity'
import type { Problem } from '@dawnlift/core/result'
import { type Assumed, assumedAt, defaultNumber } from './assumed.js'
import type { DefaultPath } from './default-table.js'
import { pathText } from './yaml-source.js'

type Path = readonly PropertyKey[]

/** Collects what is wrong and what is assumed while a document is turned into a job. */
export interface Ledger {
  readonly problems: readonly Problem[]
  readonly assumed: readonly Assumed[]
  readonly wrong: (code: string, path: Path, say: string) => undefined
  /** The value, or a problem that says what is missing. */
  readonly need: <T>(value: T | undefined, path: Path, what: string) => T | undefined
  /** The value, or the default with a line in the list of assumptions. */
  readonly orNumber: (value: number | undefined, row: DefaultPath, path: Path) => number
  readonly assume: (row: DefaultPath, path: Path) => void
  readonly note: (assumed: Assumed) => void
  /** A quantity as the job's own units have it, for what is said of it. */
  readonly said: (value: number, dimension?: Dimension) => string
}

export function openLedger(units: 'metric' | 'imperial', place: (path: Path) => string): Ledger {
  const problems: Problem[] = []
  const assumed = new Map<string, Assumed>()
  const wrong = (code: string, path: Path, say: string): undefined => {
    problems.push({ code, at: place(path), say })
  }
  const note = (row: Assumed) => {
    if (!assumed.has(row.at)) assumed.set(row.at, row)
  }
  const assume = (row: DefaultPath, path: Path) => note(assumedAt(row, units, pathText(path)))
  return {
    problems,
    get assumed() {
      return [...assumed.values()]
    },
    wrong,
    need: (value, path, what) =>
      value ?? wrong('job/missing', path, `“${String(path.at(-1))}” is missing; write ${what}`),
    orNumber: (value, row, path) => {
      if (value !== undefined) return value
      assume(row, path)
      return defaultNumber(row)
    },
    assume,
    note,
    said: (value, dimension = 'length') => formatQuantity(value, dimension, units),
  }
}
