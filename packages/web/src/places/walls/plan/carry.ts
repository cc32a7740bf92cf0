import { pathLength } from '@dawnlift/core/geometry'
import type { JobEdit, RawJob } from '@dawnlift/document/job'
import type { Draft } from '../draft.js'
import { lengthText } from '../edits/length-text.js'
import { changeEdits } from '../edits/part-edits.js'
import { columnEntry, embedEntry, openingEntry } from '../edits/part-entry.js'
import { type Found, findThing, type Thing, widthOf } from '../thing.js'
import { alongStep, guidesAlong, snapAlong, snapHeight } from './snap-along.js'

/** Something that stands in a wall, in the hand and not yet set down. A lintel takes its opening along. */
export interface Carry {
  readonly thing: Thing
  /** Station of its middle. */
  readonly at: number
  /** Height of its underside: the sill of an opening, the slab for a column. */
  readonly low: number
  /** What it lines up with. */
  readonly to?: string
}

/** Takes up what stands in a wall. */
export function pickUp(draft: Draft, thing: Thing | undefined): Carry | undefined {
  const found = findThing(draft, thing)
  if (!found || !thing || found.kind === 'wall') return undefined
  return { thing, at: found.part.at, low: lowOf(found) }
}

function lowOf(found: Found): number {
  if (found.kind === 'opening' || found.kind === 'lintel') return found.part.sill
  return found.kind === 'embed' ? found.part.bottom : found.wall.base
}

/** Along the wall to where the hand is; what it lines up with within reach takes it. */
export function carriedTo(draft: Draft, carry: Carry, station: number, reach: number): Carry {
  const found = findThing(draft, carry.thing)
  if (!found || found.kind === 'wall') return carry
  const snapped = snapAlong(
    station,
    found.kind === 'lintel' ? found.part.width : widthOf(found),
    pathLength(found.wall.centreline),
    guidesAlong(draft, carry.thing),
    { step: alongStep(draft.units), reach },
  )
  return { thing: carry.thing, low: carry.low, ...snapped }
}

/** Up or down onto a layer; doors and columns stay on the slab. */
export function carriedUp(draft: Draft, carry: Carry, low: number): Carry {
  const found = findThing(draft, carry.thing)
  if (!found || found.kind === 'wall' || found.kind === 'column') return carry
  if (found.kind !== 'embed' && found.part.kind !== 'window') return carry
  const tall = found.kind === 'embed' ? found.part.height : found.part.head - found.part.sill
  const { base, top } = found.wall
  const { at, to } = snapHeight(low, draft.print.layerHeight, base, Math.max(base, top - tall))
  return { thing: carry.thing, at: carry.at, low: at, ...(to ? { to } : {}) }
}

/** The plan as it would be if it were set down here. */
export function withCarry(draft: Draft, carry: Carry | undefined): Draft {
  if (!carry) return draft
  const { at, low } = carry
  const { id, kind } = carry.thing
  const change = <T extends { readonly id: string }>(parts: readonly T[], how: (part: T) => T) =>
    parts.map(each => (each.id === id ? how(each) : each))
  if (kind === 'embed')
    return { ...draft, embeds: change(draft.embeds, each => ({ ...each, at, bottom: low })) }
  if (kind === 'column') return { ...draft, columns: change(draft.columns, each => ({ ...each, at })) }
  return {
    ...draft,
    openings: change(draft.openings, each => ({
      ...each,
      at,
      sill: low,
      head: each.head + low - each.sill,
    })),
  }
}

/** What the document must say for it to stand here; nothing when it has not moved. */
export function carryEdits(raw: RawJob, draft: Draft, carry: Carry): readonly JobEdit[] {
  const found = findThing(draft, carry.thing)
  if (!found || found.kind === 'wall') return []
  const { units } = draft
  const { id } = carry.thing
  const text = (value: number) => lengthText(value, units)
  const along = differs(carry.at, found.part.at) ? { at: text(carry.at) } : {}
  const rise = carry.low - lowOf(found)
  const rises = differs(carry.low, lowOf(found))
  if (found.kind === 'column')
    return written(along, values =>
      changeEdits(raw, 'columns', id, values, () => columnEntry(found.part, units)),
    )
  if (found.kind === 'embed') {
    const values = { ...along, ...(rises ? { bottom: text(carry.low) } : {}) }
    return written(values, each => changeEdits(raw, 'embeds', id, each, () => embedEntry(found.part, units)))
  }
  const up = rises ? { sill: text(carry.low), head: text(found.part.head + rise) } : {}
  return written({ ...along, ...up }, values =>
    changeEdits(raw, 'openings', id, values, () => openingEntry(found.part, units)),
  )
}

const differs = (a: number, b: number): boolean => Math.abs(a - b) > 1e-6

const written = (
  values: Readonly<Record<string, string>>,
  write: (values: Readonly<Record<string, string>>) => readonly JobEdit[],
): readonly JobEdit[] => (Object.keys(values).length === 0 ? [] : write(values))
