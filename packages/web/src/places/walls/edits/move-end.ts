import {
  distance,
  nearestOnPath,
  type Path,
  type Point,
  pathLength,
  pathPoint,
  plus,
  times,
  towards,
} from '@dawnlift/core/geometry'
import type { Wall } from '@dawnlift/core/job'
import type { JobEdit, RawJob } from '@dawnlift/document/job'
import type { Draft } from '../draft.js'
import { lengthText } from './length-text.js'
import { changeEdits, inTurn } from './part-edits.js'
import { columnEntry, embedEntry, openingEntry, pathEntry, wallEntry } from './part-entry.js'

/** Ends nearer than this are one corner [m]. */
const together = 0.002

export interface MovedWall {
  readonly wall: Wall
  readonly path: Path
}

/** A wall’s end at another place; ends of other walls that meet it there go along, so that the corner stays closed. */
export function moveEnd(draft: Draft, wallId: string, end: 'start' | 'end', to: Point): readonly MovedWall[] {
  const wall = draft.walls.find(each => each.id === wallId)
  const from = wall && (end === 'start' ? wall.centreline.points[0] : wall.centreline.points.at(-1))
  if (!from) return []
  return draft.walls.flatMap(each => {
    const { points, closed } = each.centreline
    if (closed) return []
    const moved = points.map((point, index) =>
      (index === 0 || index === points.length - 1) && distance(point, from) < together ? to : point,
    )
    return moved.some((point, index) => point !== points[index])
      ? [{ wall: each, path: { ...each.centreline, points: moved } }]
      : []
  })
}

/** Where a wall’s last straight piece must end for the wall to be so long; nothing where that piece is an arc or would vanish. */
export function endForLength(path: Path, length: number): Point | undefined {
  const [from, end] = [path.points.at(-2), path.points.at(-1)]
  if (path.closed || !from || !end || path.bulges.at(-1) !== 0) return undefined
  const piece = distance(from, end) + length - pathLength(path)
  return piece > together ? plus(from, times(towards(from, end), piece)) : undefined
}

/** Writes moved walls, and new stations for what stands in them, so that it stays at its place in the building. */
export function movedWallEdits(raw: RawJob, draft: Draft, moved: readonly MovedWall[]): readonly JobEdit[] {
  const { units } = draft
  const edits = moved.flatMap(({ wall, path }) => [
    ...changeEdits(raw, 'walls', wall.id, { path: pathEntry(path, units) }, () => wallEntry(wall, units)),
    ...stationEdits(draft.openings, wall, path, (part, at) =>
      changeEdits(raw, 'openings', part.id, at, () => openingEntry(part, units)),
    ),
    ...stationEdits(draft.embeds, wall, path, (part, at) =>
      changeEdits(raw, 'embeds', part.id, at, () => embedEntry(part, units)),
    ),
    ...stationEdits(draft.columns, wall, path, (part, at) =>
      changeEdits(raw, 'columns', part.id, at, () => columnEntry(part, units)),
    ),
  ])

  return inTurn(raw, edits)

  function stationEdits<T extends { readonly wall: string; readonly at: number }>(
    parts: readonly T[],
    wall: Wall,
    path: Path,
    write: (part: T, change: { readonly at: string }) => readonly JobEdit[],
  ): readonly JobEdit[] {
    const length = pathLength(wall.centreline)
    return parts
      .filter(part => part.wall === wall.id)
      .flatMap(part => {
        const station = nearestOnPath(path, pathPoint(wall.centreline, Math.min(part.at, length))).station
        return Math.abs(station - part.at) < 5e-4
          ? []
          : write(part, { at: lengthText(Math.round(station * 1e4) / 1e4, units) })
      })
  }
}
