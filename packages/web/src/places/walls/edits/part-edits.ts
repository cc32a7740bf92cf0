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

/** Takes a part out, and its name from the cuts the lead forbids. The last entry goes with its list. */
export function removeEdits(raw: RawJob, list: PartList, id: string): readonly JobEdit[] {
  const index = entryIndex(raw, list, id)
  if (index === undefined) return []
  const noCut: readonly unknown[] = Array.isArray(raw.noCutAt) ? raw.noCutAt : []
  const barred = noCut.map(String).indexOf(id)
  return [
    { kind: 'remove', path: entriesOf(raw, list).length === 1 ? [list] : [list, index] },
    ...(barred < 0
      ? []
      : [{ kind: 'remove' as const, path: noCut.length === 1 ? ['noCutAt'] : ['noCutAt', barred] }]),
  ]
}

/** `F3` → the first of `F4`, `F5` … that no part has yet. */
export function nextId(like: string, used: ReadonlySet<string>): string {
  const [, stem = 'X', digits = '0'] = /^(.*?)(\d*)$/.exec(like) ?? []
  let number = Number(digits) + 1
  while (used.has(`${stem}${number}`)) number += 1
  return `${stem}${number}`
}
