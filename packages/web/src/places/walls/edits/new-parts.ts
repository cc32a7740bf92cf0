import { type Path, type Point, pathLength } from '@dawnlift/core/geometry'
import { findJunctions } from '@dawnlift/core/wall'
import type { JobEdit, RawJob } from '@dawnlift/document/job'
import type { Draft } from '../draft.js'
import type { Thing } from '../thing.js'
import { lengthText } from './length-text.js'
import { addEdits, type Entry, nextId, writtenEntry } from './part-edits.js'
import { pathEntry, wallEntry } from './part-entry.js'

export interface Added {
  readonly thing: Thing
  readonly edits: readonly JobEdit[]
}

export const idsOf = (draft: Draft): ReadonlySet<string> =>
  new Set([...draft.walls, ...draft.openings, ...draft.embeds, ...draft.columns].map(each => each.id))

/** A wall made like another one: of its type if it has one, else of its make-up. */
export function newWall(
  raw: RawJob,
  draft: Draft,
  { points, bulges }: { readonly points: readonly Point[]; readonly bulges: readonly number[] },
  like: string | undefined,
): Added {
  const id = nextId('W0', idsOf(draft))
  const path: Path = { points, bulges, closed: false }
  const model = draft.walls.find(each => each.id === like) ?? draft.walls[0]
  const given = model && writtenEntry(raw, 'walls', model.id)
  const {
    path: _path,
    id: _id,
    name: _name,
    joints: _joints,
    ...kind
  } = given ?? (model ? wallEntry(model, draft.units) : {})
  const entry = { id, ...kind, path: pathEntry(path, draft.units) }
  return { thing: { kind: 'wall', id }, edits: addEdits(raw, 'walls', entry) }
}

/** Usual sizes to begin with; each is a field on the strip below the plan [m]. */
const beginnings = {
  metric: { door: { width: 0.9, sill: 0, head: 2.1 }, window: { width: 1.2, sill: 0.9, head: 2.1 } },
  imperial: {
    door: { width: 36 * 0.0254, sill: 0, head: 81 * 0.0254 },
    window: { width: 48 * 0.0254, sill: 30 * 0.0254, head: 81 * 0.0254 },
  },
} as const

/** An opening in the widest stretch of the wall that is free. */
export function newOpening(raw: RawJob, draft: Draft, wall: string, kind: 'door' | 'window'): Added {
  const id = nextId(kind === 'door' ? 'D0' : 'F0', idsOf(draft))
  const { width, sill, head } = beginnings[draft.units][kind]
  const text = (value: number) => lengthText(value, draft.units)
  const at = freePlace(draft, wall, width)
  const entry: Entry = {
    id,
    wall,
    kind,
    at: text(at),
    width: text(width),
    ...(sill > 0 ? { sill: text(sill) } : {}),
    head: text(head),
    lintel: {},
  }
  return { thing: { kind: 'opening', id }, edits: addEdits(raw, 'openings', entry) }
}

/** A socket box, the commonest embed. */
export function newEmbed(raw: RawJob, draft: Draft, wall: string): Added {
  const id = nextId('E0', idsOf(draft))
  const imperial = draft.units === 'imperial'
  const [width, height, depth] = imperial ? ['2 1/4 in', '3 3/4 in', '2 in'] : ['70 mm', '80 mm', '50 mm']
  const entry: Entry = {
    id,
    wall,
    kind: 'box',
    trade: 'electrical',
    face: 'left',
    at: lengthText(freePlace(draft, wall, 0.07), draft.units),
    bottom: imperial ? '12 in' : '300 mm',
    width,
    height,
    depth,
  }
  return { thing: { kind: 'embed', id }, edits: addEdits(raw, 'embeds', entry) }
}

/** A column to be poured inside the wall, as thick as it. */
export function newColumn(raw: RawJob, draft: Draft, wall: string): Added | undefined {
  const found = draft.walls.find(each => each.id === wall)
  if (!found) return undefined
  const id = nextId('C0', idsOf(draft))
  const length = draft.units === 'imperial' ? 12 * 0.0254 : 0.3
  const text = (value: number) => lengthText(value, draft.units)
  const entry = {
    id,
    wall,
    at: text(freePlace(draft, wall, length)),
    length: text(length),
    thickness: text(found.thickness),
  }
  return { thing: { kind: 'column', id }, edits: addEdits(raw, 'columns', entry) }
}

/** Middle of the free stretch that is widest, or nearest to a station where the width fits with a bead’s room on both sides. */
export function freePlace(draft: Draft, wallId: string, width: number, near?: number): number {
  const wall = draft.walls.find(each => each.id === wallId)
  const length = wall ? pathLength(wall.centreline) : width
  const room = draft.print.beadWidth
  const taken = [
    ...[
      ...draft.openings,
      ...draft.embeds,
      ...draft.columns.map(each => ({ ...each, width: each.length })),
    ].filter(each => each.wall === wallId),
    ...meetings(draft, wallId),
  ]
    .map(({ at, width: wide }) => [at - wide / 2, at + wide / 2] as const)
    .sort((a, b) => a[0] - b[0])
  const gaps: (readonly [number, number])[] = []
  let from = 0
  for (const [start, end] of [...taken, [length, length] as const]) {
    if (start - from >= width + 2 * room) gaps.push([from, start])
    from = Math.max(from, end)
  }
  if (near === undefined) {
    const [widest] = [...gaps].sort((a, b) => b[1] - b[0] - (a[1] - a[0]))
    return widest ? (widest[0] + widest[1]) / 2 : length / 2
  }
  const nearest = gaps
    .map(([start, end]) => Math.min(Math.max(near, start + room + width / 2), end - room - width / 2))
    .sort((a, b) => Math.abs(a - near) - Math.abs(b - near))[0]
  return nearest ?? length / 2
}

/** Where other walls meet this one, as wide as they are: nothing is cut there. */
const meetings = (draft: Draft, wallId: string): readonly { readonly at: number; readonly width: number }[] =>
  findJunctions(draft.walls).flatMap(({ arms }) => {
    const own = arms.filter(arm => arm.wall.id === wallId)
    const other = arms.filter(arm => arm.wall.id !== wallId)
    return own.flatMap(arm => other.map(({ wall }) => ({ at: arm.station, width: wall.thickness })))
  })
