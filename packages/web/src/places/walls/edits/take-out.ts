import type { JobEdit, RawJob } from '@dawnlift/document/job'
import type { Draft } from '../draft.js'
import { findThing, type Thing } from '../thing.js'
import { addEdits, entryIndex, type PartList, without, withoutEdits, withoutMentions } from './part-edits.js'
import { openingEntry } from './part-entry.js'

export const listOf = (kind: Thing['kind']): PartList =>
  kind === 'wall' ? 'walls' : kind === 'embed' ? 'embeds' : kind === 'column' ? 'columns' : 'openings'

/** Names of drawn things that the document leaves out. */
export function leftOut(raw: RawJob | undefined): readonly string[] {
  const list = (raw?.drawing as { readonly leaveOut?: unknown } | undefined)?.leaveOut
  return Array.isArray(list) ? list.map(String) : []
}

/** Takes a thing out of the job, be it written in it or drawn; a wall with all that stands in it. */
export function takeOutEdits(
  raw: RawJob,
  draft: Draft,
  thing: Thing,
  drawn: ReadonlySet<string>,
): readonly JobEdit[] {
  const found = findThing(draft, thing)
  if (!found) return []
  if (found.kind === 'lintel') return withoutLintel(raw, draft, found.part)
  const gone = new Set([thing.id])
  if (found.kind === 'wall')
    for (const each of [...draft.openings, ...draft.embeds, ...draft.columns])
      if (each.wall === thing.id) gone.add(each.id)
  // What is drawn in a wall goes with it.
  const named = drawn.has(thing.id) ? [thing.id] : [...gone].filter(id => drawn.has(id))
  const already = leftOut(raw)
  return [
    ...(['walls', 'openings', 'embeds', 'columns'] as const).flatMap(list => withoutEdits(raw, list, gone)),
    ...withoutMentions(raw, gone),
    ...named.map(
      (value, index): JobEdit => ({
        kind: 'set',
        path: ['drawing', 'leaveOut', already.length + index],
        value,
      }),
    ),
  ]
}

/** Whatever its type says: the opening is written out without one. */
function withoutLintel(
  raw: RawJob,
  { units }: Draft,
  opening: Draft['openings'][number],
): readonly JobEdit[] {
  const { lintel: _, ...bare } = opening
  const index = entryIndex(raw, 'openings', opening.id)
  const value = openingEntry(bare, units)
  return index === undefined
    ? addEdits(raw, 'openings', value)
    : [{ kind: 'set', path: ['openings', index], value }]
}

/** A drawn thing that was left out is there again. */
export function bringBackEdits(raw: RawJob, id: string): readonly JobEdit[] {
  const list = leftOut(raw)
  return without(
    ['drawing', 'leaveOut'],
    list.length,
    list.flatMap((each, index) => (each === id ? [index] : [])),
  )
}
