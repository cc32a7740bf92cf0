import { type Path, pathLength, pathNormal } from '@dawnlift/core/geometry'
import type { Wall } from '@dawnlift/core/job'
import type { RawJob } from '@dawnlift/document/job'
import type { Draft } from '../draft.js'
import { type Found, findThing, inOrder, type Thing, widthOf } from '../thing.js'
import { lengthText } from './length-text.js'
import { type Added, freePlace, idsOf } from './new-parts.js'
import { addAllEdits, type Entry, nextId, writtenEntry } from './part-edits.js'
import { columnEntry, embedEntry, openingEntry, pathEntry, wallEntry } from './part-entry.js'
import { listOf } from './take-out.js'

/** The same again on the same wall: beside it where there is room, or mirrored about the wall’s middle. A wall goes with all that stands in it. */
export function copyOf(
  raw: RawJob,
  draft: Draft,
  thing: Thing,
  how: 'beside' | 'mirrored',
): Added | undefined {
  const found = findThing(draft, thing)
  if (!found || found.kind === 'lintel') return undefined
  if (found.kind === 'wall')
    return copiesOfWall(raw, draft, found.part, [besideWall(draft, found.part, how)], how === 'mirrored')
  const length = pathLength(found.wall.centreline)
  const at =
    how === 'mirrored'
      ? length - found.part.at
      : freePlace(draft, found.wall.id, widthOf(found), found.part.at)
  return copiesAt(raw, draft, found, [at])
}

/** The same again so many times, each a step further along the wall; walls to the left of the last one. */
export function arrayOf(
  raw: RawJob,
  draft: Draft,
  thing: Thing,
  { times: count, every }: { readonly times: number; readonly every: number },
): Added | undefined {
  const found = findThing(draft, thing)
  if (!found || found.kind === 'lintel') return undefined
  const steps = Array.from({ length: count }, (_, index) => (index + 1) * every)
  if (found.kind === 'wall') {
    const places = steps.map(step => toTheLeft(found.part, step))
    return copiesOfWall(raw, draft, found.part, places)
  }
  return copiesAt(
    raw,
    draft,
    found,
    steps.map(step => found.part.at + step),
  )
}

type InWall = Exclude<Found, { readonly kind: 'wall' | 'lintel' }>

function copiesAt(raw: RawJob, draft: Draft, found: Found, stations: readonly number[]): Added | undefined {
  if (found.kind === 'wall' || found.kind === 'lintel') return undefined
  const used = new Set(idsOf(draft))
  const whole = wholeEntry(raw, draft, found as InWall)
  const entries = stations.map(at => {
    const id = nextId(found.part.id, used)
    used.add(id)
    return { ...whole, id, at: lengthText(Number(at.toFixed(4)), draft.units) }
  })
  const last = entries.at(-1)
  return (
    last && { thing: { kind: found.kind, id: last.id }, edits: addAllEdits(raw, listOf(found.kind), entries) }
  )
}

function wholeEntry(raw: RawJob, draft: Draft, found: InWall): Entry {
  const given = writtenEntry(raw, listOf(found.kind), found.part.id)
  if (given) return given
  switch (found.kind) {
    case 'opening':
      return openingEntry(found.part, draft.units)
    case 'embed':
      return embedEntry(found.part, draft.units)
    case 'column':
      return columnEntry(found.part, draft.units)
  }
}

function toTheLeft(wall: Wall, away: number): (path: Path) => Path {
  const [nx, ny] = pathNormal(wall.centreline, 0)
  return path => ({ ...path, points: path.points.map(([x, y]) => [x + nx * away, y + ny * away] as const) })
}

/** A metre clear to its left; or on the other side of the middle of the house. */
function besideWall(draft: Draft, wall: Wall, how: 'beside' | 'mirrored'): (path: Path) => Path {
  if (how === 'beside') return toTheLeft(wall, wall.thickness + 1)
  const xs = draft.walls.flatMap(each => each.centreline.points.map(([x]) => x))
  const twice = Math.min(...xs) + Math.max(...xs)
  return path => ({
    ...path,
    points: path.points.map(([x, y]) => [twice - x, y] as const),
    bulges: path.bulges.map(bulge => -bulge),
  })
}

function copiesOfWall(
  raw: RawJob,
  draft: Draft,
  wall: Wall,
  places: readonly ((path: Path) => Path)[],
  mirrored = false,
): Added | undefined {
  const used = new Set(idsOf(draft))
  const fresh = (like: string) => {
    const id = nextId(like, used)
    used.add(id)
    return id
  }
  const walls: Entry[] = []
  const inside: Record<'openings' | 'embeds' | 'columns', Entry[]> = { openings: [], embeds: [], columns: [] }
  const { name: _name, ...whole } = writtenEntry(raw, 'walls', wall.id) ?? wallEntry(wall, draft.units)
  for (const place of places) {
    const id = fresh(wall.id)
    walls.push({ ...whole, id, path: pathEntry(place(wall.centreline), draft.units) })
    for (const thing of inOrder(draft)) {
      const found = findThing(draft, thing)
      if (!found || found.kind === 'wall' || found.kind === 'lintel' || found.part.wall !== wall.id) continue
      const entry = {
        ...wholeEntry(raw, draft, found),
        id: fresh(found.part.id),
        wall: id,
        ...(mirrored && found.kind === 'embed' ? { face: otherFace(found.part.face) } : {}),
      }
      inside[listOf(found.kind) as keyof typeof inside].push(entry)
    }
  }
  const last = walls.at(-1)
  const lists = Object.entries(inside) as [keyof typeof inside, Entry[]][]
  return (
    last && {
      thing: { kind: 'wall', id: String(last.id) },
      edits: [
        ...addAllEdits(raw, 'walls', walls),
        ...lists.flatMap(([list, entries]) => addAllEdits(raw, list, entries)),
      ],
    }
  )
}

/** In a mirror what was on the left is on the right. */
const otherFace = (face: string): string => (face === 'left' ? 'right' : face === 'right' ? 'left' : face)
