import { distance, minus, nearestOnPath, type Path, type Point, plus } from '@dawnlift/core/geometry'
import type { Wall } from '@dawnlift/core/job'
import type { JobEdit, RawJob } from '@dawnlift/document/job'
import type { Draft } from '../draft.js'
import { type MovedWall, movedWallEdits } from '../edits/move-end.js'
import { changeEdits, inTurn } from '../edits/part-edits.js'
import { pathEntry, wallEntry } from '../edits/part-entry.js'
import { findThing, type Thing } from '../thing.js'
import { snapPoint } from './snap-point.js'

/** A whole wall in the hand, with all that stands in it. */
export interface Shift {
  readonly thing: Thing
  readonly by: Point
  /** What it lines up with. */
  readonly to?: string
}

export const takeWall = (draft: Draft, thing: Thing | undefined): Shift | undefined =>
  thing && findThing(draft, thing)?.kind === 'wall' ? { thing, by: [0, 0] } : undefined

/** Shifted by as much as the hand has gone: straight across where it nearly is, onto ends and walls within reach, else by whole steps. */
export function shiftedTo(
  draft: Draft,
  { thing }: Shift,
  asked: Point,
  { reach, step }: { readonly reach: number; readonly step: number },
): Shift {
  const found = findThing(draft, thing)
  if (found?.kind !== 'wall') return { thing, by: [0, 0] }
  const straight: Point = [
    Math.abs(asked[0]) < reach ? 0 : asked[0],
    Math.abs(asked[1]) < reach ? 0 : asked[1],
  ]
  const except = [thing.id, ...stretched(draft, found.wall).map(({ wall }) => wall.id)]
  const snaps = found.wall.centreline.points.flatMap(point => {
    const { point: on, to } = snapPoint(draft, plus(point, straight), { reach, step, except })
    return to ? [{ by: minus(on, point), to }] : []
  })
  const [best] = snaps.sort((a, b) => distance(a.by, straight) - distance(b.by, straight))
  if (best) return { thing, by: tidy(best.by), to: best.to }
  const whole = (value: number) => Math.round(value / step) * step
  return { thing, by: tidy([whole(straight[0]), whole(straight[1])]) }
}

/** The wall at its new place, and the walls that end on it stretched along, so that no corner opens. */
export function movedBy(draft: Draft, { thing, by }: Shift): readonly MovedWall[] {
  const found = findThing(draft, thing)
  if (found?.kind !== 'wall' || (by[0] === 0 && by[1] === 0)) return []
  const along = (path: Path, moves: (index: number) => boolean): Path => ({
    ...path,
    points: path.points.map((point, index) => (moves(index) ? tidy(plus(point, by)) : point)),
  })
  return [
    { wall: found.wall, path: along(found.wall.centreline, () => true) },
    ...stretched(draft, found.wall).map(({ wall, ends }) => ({
      wall,
      path: along(wall.centreline, index => ends.includes(index)),
    })),
  ]
}

/** Things in the shifted wall keep their stations; those in stretched walls their places in the building. */
export function shiftEdits(raw: RawJob, draft: Draft, shift: Shift): readonly JobEdit[] {
  const [own, ...others] = movedBy(draft, shift)
  if (!own) return []
  const { units } = draft
  return inTurn(raw, [
    ...changeEdits(raw, 'walls', own.wall.id, { path: pathEntry(own.path, units) }, () =>
      wallEntry(own.wall, units),
    ),
    ...movedWallEdits(raw, draft, others),
  ])
}

export function withMoved(draft: Draft, moved: readonly MovedWall[]): Draft {
  if (moved.length === 0) return draft
  const paths = new Map(moved.map(each => [each.wall.id, each.path]))
  return {
    ...draft,
    walls: draft.walls.map(wall => ({ ...wall, centreline: paths.get(wall.id) ?? wall.centreline })),
  }
}

/** Walls that end on this one, and which of their points do. */
function stretched(
  draft: Draft,
  on: Wall,
): readonly { readonly wall: Wall; readonly ends: readonly number[] }[] {
  return draft.walls.flatMap(wall => {
    const { points, closed } = wall.centreline
    if (wall.id === on.id || closed) return []
    const ends = [0, points.length - 1].filter(
      index => nearestOnPath(on.centreline, points[index]!).distance <= on.thickness * 0.6,
    )
    return ends.length > 0 ? [{ wall, ends }] : []
  })
}

const tidy = ([x, y]: Point): Point => [Number(x.toFixed(9)), Number(y.toFixed(9))]
