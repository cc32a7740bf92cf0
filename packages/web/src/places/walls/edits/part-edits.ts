import type { JobEdit, RawJob } from '@dawnlift/document/job'

export type PartList = 'walls' | 'openings' | 'embeds' | 'columns'
/** An entry of such a list as it is written: texts, and blocks or lists of them. */
export type Entry = Readonly<Record<string, unknown>>

const entriesOf = (raw: RawJob, list: PartList): readonly Entry[] => {
  const found = raw[list]
  return Array.isArray(found) ? (found as readonly Entry[]) : []
}

/** Where the document itself gives this part; undefined when it comes from the drawing. */
export function entryIndex(raw: RawJob, list: PartList, id: string): number | undefined {
  const index = entriesOf(raw, list).findIndex(each => String(each?.id) === id)
  return index < 0 ? undefined : index
}

/** The part as the document itself gives it. */
export function writtenEntry(raw: RawJob, list: PartList, id: string): Entry | undefined {
  const index = entryIndex(raw, list, id)
  return index === undefined ? undefined : (raw[list] as readonly Entry[])[index]
}

/** Several entries behind those that are there. */
export const addAllEdits = (raw: RawJob, list: PartList, entries: readonly Entry[]): readonly JobEdit[] =>
  entries.map((value, index) => ({ kind: 'set', path: [list, entriesOf(raw, list).length + index], value }))

/** Sets some values of a part. A part of the drawing gets an entry of its own, which stands in for the drawn one. */
export function changeEdits(
  raw: RawJob,
  list: PartList,
  id: string,
  changes: Entry,
  whole: () => Entry,
): readonly JobEdit[] {
  const index = entryIndex(raw, list, id)
  if (index === undefined) return addEdits(raw, list, { ...whole(), ...changes })
  return Object.entries(changes).map(([key, value]) => ({ kind: 'set', path: [list, index, key], value }))
}

export const addEdits = (raw: RawJob, list: PartList, entry: Entry): readonly JobEdit[] => [
  { kind: 'set', path: [list, entriesOf(raw, list).length], value: entry },
]

/** Edits made apart, each as if it were the only one: entries they add are put behind one another. */
export function inTurn(raw: RawJob, edits: readonly JobEdit[]): readonly JobEdit[] {
  const next = new Map<string, number>()
  return edits.map(edit => {
    const [list, index] = edit.path
    const length = entriesOf(raw, list as PartList).length
    if (edit.kind !== 'set' || edit.path.length !== 2 || typeof index !== 'number' || index < length)
      return edit
    const free = next.get(String(list)) ?? length
    next.set(String(list), free + 1)
    return { ...edit, path: [list!, free] }
  })
}

/** Takes the document's own entry of a part out; a drawn part is then as drawn again. */
export const removeEdits = (raw: RawJob, list: PartList, id: string): readonly JobEdit[] =>
  withoutEdits(raw, list, new Set([id]))

/** Takes entries out of a list, the last ones first so that the others keep their numbers. An empty list goes too. */
export function withoutEdits(raw: RawJob, list: PartList, ids: ReadonlySet<string>): readonly JobEdit[] {
  const entries = entriesOf(raw, list)
  return without(
    [list],
    entries.length,
    entries.flatMap((entry, index) => (ids.has(String(entry?.id)) ? [index] : [])),
  )
}

/** The same for lists of names, and of things that name a wall. */
export function withoutMentions(raw: RawJob, ids: ReadonlySet<string>): readonly JobEdit[] {
  const listed = (list: unknown): readonly unknown[] => (Array.isArray(list) ? list : [])
  const noCut = listed(raw.noCutAt)
  const joints = listed(raw.joints)
  const numbers = (list: readonly unknown[], names: (each: unknown) => unknown) =>
    list.flatMap((each, index) => (ids.has(String(names(each))) ? [index] : []))
  return [
    ...without(
      ['noCutAt'],
      noCut.length,
      numbers(noCut, each => each),
    ),
    ...without(
      ['joints'],
      joints.length,
      numbers(joints, each => (each as Entry | null)?.wall),
    ),
  ]
}

export function without(
  path: readonly string[],
  length: number,
  gone: readonly number[],
): readonly JobEdit[] {
  if (gone.length === 0) return []
  if (gone.length === length) return [{ kind: 'remove', path }]
  return [...gone].reverse().map(index => ({ kind: 'remove', path: [...path, index] }))
}

/** `F3` → the first of `F4`, `F5` … that no part has yet. */
export function nextId(like: string, used: ReadonlySet<string>): string {
  const [, stem = 'X', digits = '0'] = /^(.*?)(\d*)$/.exec(like) ?? []
  let number = Number(digits) + 1
  while (used.has(`${stem}${number}`)) number += 1
  return `${stem}${number}`
}
