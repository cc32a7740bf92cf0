import { nearestOnPath, type Point, pathLength } from '@dawnlift/core/geometry'
import type { Draft } from '../draft.js'
import { findThing, type Thing, widthOf } from '../thing.js'

/** The thing under a point, or within reach of it [m]. Small things go before large ones: an embed in a door’s jamb is meant when it is hit. */
export function thingAt(draft: Draft, point: Point, reach: number): Thing | undefined {
  const near = draft.walls
    .map(wall => ({ wall, ...nearestOnPath(wall.centreline, point) }))
    .filter(
      ({ wall, distance }) =>
        distance <= Math.max(wall.thickness, columnThickness(draft, wall.id)) / 2 + reach,
    )
    .sort((a, b) => a.distance - b.distance)
  const stands = (kind: Exclude<Thing['kind'], 'wall'>, ids: readonly string[]) =>
    near.flatMap(({ wall, station, distance }) =>
      ids.flatMap(id => {
        const found = findThing(draft, { kind, id })
        if (!found || found.kind === 'wall' || found.part.wall !== wall.id) return []
        const thick = found.kind === 'column' ? found.part.thickness : wall.thickness
        const away = Math.hypot(
          Math.max(0, Math.abs(station - found.part.at) - widthOf(found) / 2),
          Math.max(0, distance - thick / 2),
        )
        return away <= reach ? [{ kind, id, away }] : []
      }),
    )
  const ids = (parts: readonly { readonly id: string }[]) => parts.map(each => each.id)
  const openings = stands('opening', ids(draft.openings))
  const best = [...stands('embed', ids(draft.embeds)), ...openings].sort((a, b) => a.away - b.away)[0]
  // A lintel shows only where it bears, beside its opening; a column lies under what stands in it.
  const under = [...stands('lintel', ids(draft.openings)), ...stands('column', ids(draft.columns))].sort(
    (a, b) => a.away - b.away,
  )[0]
  const found = best && (best.away === 0 || !under || under.away > 0) ? best : (under ?? best)
  if (found) return { kind: found.kind, id: found.id }
  return near[0] ? { kind: 'wall', id: near[0].wall.id } : undefined
}

const columnThickness = (draft: Draft, wall: string): number =>
  Math.max(0, ...draft.columns.filter(each => each.wall === wall).map(each => each.thickness))

/** The end of an open wall within reach of a point. */
export function endAt(
  draft: Draft,
  wallId: string,
  point: Point,
  reach: number,
): 'start' | 'end' | undefined {
  const wall = draft.walls.find(each => each.id === wallId)
  if (!wall || wall.centreline.closed) return undefined
  const { points } = wall.centreline
  const away = (end: Point | undefined) =>
    end ? Math.hypot(end[0] - point[0], end[1] - point[1]) : Number.POSITIVE_INFINITY
  const [start, end] = [away(points[0]), away(points.at(-1))]
  if (Math.min(start, end) > reach) return undefined
  return start < end ? 'start' : 'end'
}

/** The wall nearest to a point and the station there. */
export function wallNear(
  draft: Draft,
  point: Point,
): { readonly wall: string; readonly station: number; readonly length: number } | undefined {
  const [best] = draft.walls
    .map(wall => ({ wall, ...nearestOnPath(wall.centreline, point) }))
    .sort((a, b) => a.distance - b.distance)
  return best && { wall: best.wall.id, station: best.station, length: pathLength(best.wall.centreline) }
}
