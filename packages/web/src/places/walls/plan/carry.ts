import { pathLength } from '@dawnlift/core/geometry'
import type { JobEdit, RawJob } from '@dawnlift/document/job'
import type { Draft } from '../draft.js'
import { lengthText } from '../edits/length-text.js'
import { changeEdits } from '../edits/part-edits.js'
import { embedEntry, openingEntry } from '../edits/part-entry.js'
import { findThing, type Thing } from '../thing.js'
import { alongStep, guidesAlong, snapAlong, snapHeight } from './snap-along.js'

/** An opening or embed in the hand, not yet set down. */
export interface Carry {
  readonly thing: Thing
  /** Station of its middle. */
  readonly at: number
  /** Height of its underside: the sill of an opening. */
  readonly low: number
  /** What it lines up with. */
  readonly to?: string
}

/** Takes a thing up; walls and doors’ heights stay where they are. */
export function pickUp(draft: Draft, thing: Thing | undefined): Carry | undefined {
  const found = findThing(draft, thing)
  if (!found || !thing || found.kind === 'wall') return undefined
  return { thing, at: found.part.at, low: found.kind === 'opening' ? found.part.sill : found.part.bottom }
}

/** Along the wall to where the hand is; what it lines up with within reach takes it. */
export function carriedTo(draft: Draft, carry: Carry, station: number, reach: number): Carry {
  const found = findThing(draft, carry.thing)
  if (!found || found.kind === 'wall') return carry
  const snapped = snapAlong(
    station,
    found.part.width,
    pathLength(found.wall.centreline),
    guidesAlong(draft, carry.thing),
    { step: alongStep(draft.units), reach },
  )
  return { thing: carry.thing, low: carry.low, ...snapped }
}

/** Up or down onto a layer; a door stays on the slab. */
export function carriedUp(draft: Draft, carry: Carry, low: number): Carry {
  const found = findThing(draft, carry.thing)
  if (!found || found.kind === 'wall' || (found.kind === 'opening' && found.part.kind !== 'window'))
    return carry
  const tall = found.kind === 'opening' ? found.part.head - found.part.sill : found.part.height
  const { base, top } = found.wall
  const { at, to } = snapHeight(low, draft.print.layerHeight, base, Math.max(base, top - tall))
  return { thing: carry.thing, at: carry.at, low: at, ...(to ? { to } : {}) }
}

/** The plan as it would be if it were set down here. */
export function withCarry(draft: Draft, carry: Carry | undefined): Draft {
  if (!carry) return draft
  const { id, kind } = carry.thing
  if (kind === 'embed')
    return {
      ...draft,
      embeds: draft.embeds.map(each =>
        each.id === id ? { ...each, at: carry.at, bottom: carry.low } : each,
      ),
    }
  return {
    ...draft,
    openings: draft.openings.map(each =>
      each.id === id
        ? { ...each, at: carry.at, sill: carry.low, head: each.head + carry.low - each.sill }
        : each,
    ),
  }
}

/** What the document must say for it to stand here; nothing when it has not moved. */
export function carryEdits(raw: RawJob, draft: Draft, carry: Carry): readonly JobEdit[] {
  const found = findThing(draft, carry.thing)
  if (!found || found.kind === 'wall') return []
  const { units } = draft
  const along = Math.abs(carry.at - found.part.at) > 1e-6 ? { at: lengthText(carry.at, units) } : {}
  if (found.kind === 'embed') {
    const up = Math.abs(carry.low - found.part.bottom) > 1e-6 ? { bottom: lengthText(carry.low, units) } : {}
    return changes({ ...along, ...up }, 'embeds', () => embedEntry(found.part, units))
  }
  const rise = carry.low - found.part.sill
  const up =
    Math.abs(rise) > 1e-6
      ? { sill: lengthText(carry.low, units), head: lengthText(found.part.head + rise, units) }
      : {}
  return changes({ ...along, ...up }, 'openings', () => openingEntry(found.part, units))

  function changes(
    values: Readonly<Record<string, string>>,
    list: 'embeds' | 'openings',
    whole: () => Readonly<Record<string, unknown>>,
  ): readonly JobEdit[] {
    return Object.keys(values).length === 0 ? [] : changeEdits(raw, list, carry.thing.id, values, whole)
  }
}
