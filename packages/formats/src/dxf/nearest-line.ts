import { type Bounds, nearestOnPath, type Path, type Point, pathBounds } from '@dawnlift/core/geometry'
import type { Metres } from '@dawnlift/core/quantity'

/** Distance to a box, 0 inside: never more than the distance to what is in it. */
export const boxDistance = ({ least, most }: Bounds, [x, y]: Point): Metres =>
  Math.hypot(Math.max(least[0] - x, 0, x - most[0]), Math.max(least[1] - y, 0, y - most[1]))

export const boxesOf = (paths: readonly Path[]): Bounds[] => paths.map(pathBounds)

/** The path nearest to a point, one of them left out; paths whose box is further than the best are not measured. */
export function nearestLine(
  paths: readonly Path[],
  boxes: readonly Bounds[],
  point: Point,
  except = -1,
): { readonly index: number; readonly away: Metres } | undefined {
  let best: { readonly index: number; readonly away: Metres } | undefined
  for (let index = 0; index < paths.length; index++) {
    if (index === except || (best && boxDistance(boxes[index]!, point) >= best.away)) continue
    const away = nearestOnPath(paths[index]!, point).distance
    if (!best || away < best.away) best = { index, away }
  }
  return best
}
