import type { Job } from '@dawnlift/core/job'
import { type Dimension, formatQuantity, parseQuantity, writeQuantity } from '@dawnlift/core/quantity'
import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import {
  type Default,
  type DefaultPath,
  defaultTable,
  editJob,
  type JobEdit,
  type RawJob,
  readJobFiles,
} from '@dawnlift/document/job'

type Units = 'metric' | 'imperial'

/** What can be typed into one place of the job. */
export type FieldKind =
  | { readonly kind: 'quantity'; readonly dimension: Dimension }
  | { readonly kind: 'number' }
  /** A plain factor, like a safety of 1.5. */
  | { readonly kind: 'factor' }
  | { readonly kind: 'text' }
  | { readonly kind: 'yes-no' }
  | { readonly kind: 'choice'; readonly options: readonly string[] }
  /** Days off: dates with blanks or commas between them. */
  | { readonly kind: 'dates' }
  | { readonly kind: 'weekdays' }
  /** So many quantities in a row, with semicolons between them: a point, or from and to. */
  | { readonly kind: 'row'; readonly dimension: Dimension; readonly count: number }
  /** Loads of the silo: a moment of the site’s clocks and a mass each, with semicolons between them. */
  | { readonly kind: 'loads' }
  /** From one time of the day to another: `7:00 to 20:00`. */
  | { readonly kind: 'span' }

/** One place of the job that can be typed into. */
export interface Field {
  readonly path: readonly string[]
  readonly label: string
  readonly kind: FieldKind
  /** What is planned with where nothing stands: of a machine, what its profile says. In units of the core. */
  readonly planned?: (job: Job) => number | readonly number[]
  /** May be left out; what that means, in a word or two. */
  readonly without?: string
  /** What goes when it is taken out, where that is more than itself. */
  readonly within?: readonly string[]
}

/** What stands in the document, or the default that is taken where nothing stands. */
export interface Standing {
  readonly given: boolean
  readonly value: unknown
  readonly usual?: Default
}

export function standingOf(raw: RawJob, path: readonly string[]): Standing {
  const usual: Default | undefined = defaultTable[path.join('.') as DefaultPath]
  const value = path.reduce<unknown>(
    (inner, key) =>
      typeof inner === 'object' && inner !== null ? (inner as Record<string, unknown>)[key] : undefined,
    raw,
  )
  const given = value !== undefined
  return usual === undefined ? { given, value } : { given, value: given ? value : usual.text, usual }
}

/** As its reader writes it; a text that does not read as a quantity is shown as it stands, to be mended. */
export function fieldText({ kind }: Field, value: unknown, units: Units): string {
  if (value === undefined || value === null) return ''
  if (kind.kind === 'dates' || kind.kind === 'weekdays')
    return Array.isArray(value) ? value.join(' ') : String(value)
  if (kind.kind === 'yes-no') return value === true || value === 'yes' ? 'yes' : 'no'
  if (kind.kind === 'factor') return factorText(String(value))
  if (kind.kind === 'row')
    return rowOf(value)
      .map(each => quantityText(String(each), kind.dimension, units))
      .join('; ')
  if (kind.kind === 'loads') return rowOf(value).map(loadText).join('; ')
  if (kind.kind === 'span') return spanText(value)
  if (kind.kind !== 'quantity') return String(value)
  return quantityText(String(value), kind.dimension, units)
}

const rowOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [value])

function loadText(load: unknown): string {
  const { at, mass } = load as { readonly at?: unknown; readonly mass?: unknown }
  return `${String(at)} ${String(mass)}`
}

function spanText(span: unknown): string {
  const { from, until } = span as { readonly from?: unknown; readonly until?: unknown }
  return `${String(from)} to ${String(until)}`
}

/** What is planned with where nothing stands in the document, as it would be written there. */
export function plannedText({ kind, planned }: Field, job: Job, units: Units): string {
  if (!planned || (kind.kind !== 'quantity' && kind.kind !== 'row')) return ''
  const values = planned(job)
  return (typeof values === 'number' ? [values] : values)
    .map(value => valueText(value, kind.dimension, units))
    .join('; ')
}

const factorText = (text: string): string => {
  const read = parseQuantity(text, 'share')
  return read.ok ? String(Number(read.value.toPrecision(4))) : text
}

/** Hours are said as hours and seconds as seconds, everything else in the units of the reader. */
export function quantityText(text: string, dimension: Dimension, units: Units): string {
  const read = parseQuantity(text, dimension)
  if (!read.ok) return text
  return valueText(read.value, dimension, units)
}

function valueText(value: number, dimension: Dimension, units: Units): string {
  if (dimension !== 'time') return formatQuantity(value, dimension, units)
  const long = Math.abs(value)
  if (long >= 7200) return writeQuantity(value, 'time', 'h')
  return long < 60 ? writeQuantity(value, 'time', 's') : formatQuantity(value, 'time', units)
}

const pieces = (text: string): readonly string[] =>
  text
    .split(';')
    .map(piece => piece.trim())
    .filter(Boolean)

/** A moment, then a mass; what does not look like one is left to the reader to refuse. */
function writtenLoad(text: string): unknown {
  const [, at, mass] = /^(\S+ \S+)\s+(.+)$/.exec(text) ?? []
  return at ? { at, mass } : text
}

function writtenSpan(text: string): unknown {
  const [from, until] = text.split(/\s*(?:–|-|to|until)\s*/)
  return until ? { from, until } : text
}

/** What is written into the document for what was typed. */
function writtenValue(kind: FieldKind, typed: string): unknown {
  const text = typed.trim()
  if (kind.kind === 'number') return text !== '' && Number.isFinite(Number(text)) ? Number(text) : text
  if (kind.kind === 'dates') return text.split(/[\s,;]+/).filter(Boolean)
  if (kind.kind === 'weekdays')
    return text
      .split(/[\s,;]+/)
      .filter(Boolean)
      .map(Number)
  if (kind.kind === 'row') return pieces(text)
  if (kind.kind === 'loads') return pieces(text).map(writtenLoad)
  if (kind.kind === 'span') return writtenSpan(text)
  return text
}

/** The document with this field set, or what is wrong with what was typed. */
export function typedInto(document: string, field: Field, typed: string): Result<string> {
  const { kind, path } = field
  if (typed.trim() === '' && (field.without !== undefined || field.planned))
    return editedJob(document, resetEdits(field.within ?? path))
  if (typed.trim() === '' && kind.kind !== 'dates' && kind.kind !== 'text')
    return failure([{ code: 'job/empty', at: path.join('.'), say: 'Nothing is written here.' }])
  if (kind.kind === 'quantity' || kind.kind === 'factor') {
    const read = parseQuantity(typed, kind.kind === 'factor' ? 'share' : kind.dimension)
    if (!read.ok) return read
  }
  if (kind.kind === 'row' && pieces(typed).length !== kind.count)
    return failure([{ code: 'job/row', at: path.join('.'), say: rowWanted(kind.count) }])
  return editedJob(document, [{ kind: 'set', path, value: writtenValue(kind, typed) }])
}

const rowWanted = (count: number): string =>
  `${count} lengths are needed here, with semicolons between them: ${Array(count).fill('1 m').join('; ')}`

/** The document without what the job says here: the default holds again. */
export const resetField = (document: string, path: readonly string[]): Result<string> =>
  editJob(document, resetEdits(path))

export const resetEdits = (path: readonly string[]): readonly JobEdit[] => [{ kind: 'remove', path }]

/** Edits that leave the document readable; problems it had before do not stand in the way, new ones do. */
export function editedJob(document: string, edits: readonly JobEdit[]): Result<string> {
  const edited = editJob(document, edits)
  if (!edited.ok) return edited
  const after = readJobFiles(edited.value)
  if (after.ok) return edited
  const before = readJobFiles(document)
  const known = new Set(before.ok ? [] : before.problems.map(sayOf))
  const fresh = after.problems.filter(problem => !known.has(sayOf(problem)))
  return fresh.length > 0 ? failure(fresh) : success(edited.value)
}

const sayOf = ({ code, say }: Problem): string => `${code} ${say}`
