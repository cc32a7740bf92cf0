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

/** One place of the job that can be typed into. */
export interface Field {
  readonly path: readonly string[]
  readonly label: string
  readonly kind: FieldKind
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
  if (kind.kind !== 'quantity') return String(value)
  return quantityText(String(value), kind.dimension, units)
}

const factorText = (text: string): string => {
  const read = parseQuantity(text, 'share')
  return read.ok ? String(Number(read.value.toPrecision(4))) : text
}

/** Hours are said as hours, everything else in the units of the reader. */
export function quantityText(text: string, dimension: Dimension, units: Units): string {
  const read = parseQuantity(text, dimension)
  if (!read.ok) return text
  if (dimension === 'time' && Math.abs(read.value) >= 7200) return writeQuantity(read.value, 'time', 'h')
  return formatQuantity(read.value, dimension, units)
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
  return text
}

/** The document with this field set, or what is wrong with what was typed. */
export function typedInto(document: string, field: Field, typed: string): Result<string> {
  const { kind, path } = field
  if (typed.trim() === '' && kind.kind !== 'dates' && kind.kind !== 'text')
    return failure([{ code: 'job/empty', at: path.join('.'), say: 'Nothing is written here.' }])
  if (kind.kind === 'quantity' || kind.kind === 'factor') {
    const read = parseQuantity(typed, kind.kind === 'factor' ? 'share' : kind.dimension)
    if (!read.ok) return read
  }
  return editedJob(document, [{ kind: 'set', path, value: writtenValue(kind, typed) }])
}

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
