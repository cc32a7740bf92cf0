import { nearestOnPath, type Point, pathLength } from '@dawnlift/core/geometry'
import type { Draft } from '../draft.js'
import type { Thing } from '../thing.js'

/** The thing under a point, or within reach of it [m]. Small things go before large ones: an embed in a door’s jamb is meant when it is hit. */
export function thingAt(draft: Draft, point: Point, reach: number): Thing | undefined {
  const near = draft.walls
    .map(wall => ({ wall, ...nearestOnPath(wall.centreline, point) }))
    .filter(({ wall, distance }) => distance <= wall.thickness / 2 + reach)
    .sort((a, b) => a.distance - b.distance)
  const stands = <
    T extends { readonly id: string; readonly wall: string; readonly at: number; readonly width: number },
  >(
    parts: readonly T[],
    kind: 'opening' | 'embed',
  ) =>
    near.flatMap(({ wall, station, distance }) =>
      parts
        .filter(each => each.wall === wall.id)
        .map(each => ({
          kind,
          id: each.id,
          away: Math.hypot(
            Math.max(0, Math.abs(station - each.at) - each.width / 2),
            Math.max(0, distance - wall.thickness / 2),
          ),
        }))
        .filter(each => each.away <= reach),
    )
  const best = [...stands(draft.embeds, 'embed'), ...stands(draft.openings, 'opening')].sort(
    (a, b) => a.away - b.away,
  )[0]
  if (best) return { kind: best.kind, id: best.id }
  return near[0] ? { kind: 'wall', id: near[0].wall.id } : undefined
}

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
