import type { Path, Point } from './path.js'
import { direction, dot, minus } from './point.js'
import { arcOf, isStraight, type Segment, segmentsOf } from './segment.js'

/** The axis-parallel box round a shape. */
export interface Bounds {
  readonly least: Point
  readonly most: Point
}

export function pointBounds(points: Iterable<Point>): Bounds {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of points) {
    if (x < x0) x0 = x
    if (y < y0) y0 = y
    if (x > x1) x1 = x
    if (y > y1) y1 = y
  }
  return { least: [x0, y0], most: [x1, y1] }
}

export const pathBounds = (path: Path): Bounds =>
  pointBounds([...path.points, ...segmentsOf(path).flatMap(arcExtremes)])

/** Points of an arc that lie furthest along an axis; none for a straight segment. */
function arcExtremes(segment: Segment): readonly Point[] {
  if (isStraight(segment)) return []
  const { centre, radius, from, sweep } = arcOf(segment)
  const middle = direction(from + sweep / 2)
  return [0, 1, 2, 3]
    .map(quarter => direction((quarter * Math.PI) / 2))
    .filter(axis => Math.acos(Math.min(1, Math.max(-1, dot(axis, middle)))) < Math.abs(sweep) / 2)
    .map(axis => minus(centre, [-axis[0] * radius, -axis[1] * radius]))
}
