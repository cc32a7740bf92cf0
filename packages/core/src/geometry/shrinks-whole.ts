import type { Metres } from '../quantity/index.js'
import type { Point, Polygon } from './path.js'
import { cross, distance, dot, minus, plus, times } from './point.js'
import { type Ring, regionRings, ringContains } from './ring.js'
import { tangled } from './tangle.js'

/** A corner that turns more, by its cosine, is cut off by a mitre of four distances: it does not come back. */
const sharpestMitre = -0.875
/** A corner that turns less, by its cosine, is mitred whatever was asked for. */
const flattestSquare = 0.999
/** An edge this short may have turned round but for rounding. */
const shortest: Metres = 1e-7

/**
 * Whether a polygon comes back whole when it is shrunk by a distance and grown again, with mitres: no place of it is
 * thinner than twice the distance. May say no of a polygon that does come back; never yes of one that does not.
 */
export const shrinksWhole = (polygon: Polygon, by: Metres): boolean =>
  shrunkPolygon(polygon, by, 'mitre') !== undefined

/**
 * The polygon shrunk by moving its edges, where that is all there is to it, in a hundredth of the time the polygon engine
 * takes: none has turned round or met another, and the holes still lie inside, so they are the outline of what is left.
 * Nothing where places close or corners are too sharp: there the engine has to say what is left.
 */
export function shrunkPolygon(polygon: Polygon, by: Metres, join: 'mitre' | 'square'): Polygon | undefined {
  const rings = regionRings([polygon]).flatMap(ring => movedRing(ring, by, join) ?? [])
  if (rings.length <= polygon.holes.length || tangled(rings)) return undefined
  const [outer, ...holes] = rings
  return holes.every(hole => ringContains(outer!, hole[0]!)) ? { outer: outer!, holes } : undefined
}

/** The ring with its edges moved to the left, into the material, as one item; nothing when that does not work out. */
function movedRing(ring: Ring, by: Metres, join: 'mitre' | 'square'): readonly [Ring] | undefined {
  const along = ring.map((point, i) => unit(point, ring[(i + 1) % ring.length]!))
  const corners = ring.map((point, i) => movedCorner(point, along.at(i - 1)!, along[i]!, by, join))
  const moved = corners.every((corner, i) => {
    const [start, end] = [corner.at(-1), corners[(i + 1) % corners.length]![0]]
    return start && end && dot(minus(end, start), along[i]!) > shortest
  })
  return moved ? [corners.flat()] : undefined
}

/** One point, two of a corner squared off, or none of one too sharp. */
function movedCorner(
  point: Point,
  before: Point,
  after: Point,
  by: Metres,
  join: 'mitre' | 'square',
): readonly Point[] {
  const cosine = dot(before, after)
  if (!(cosine > sharpestMitre)) return []
  const turn = cross(before, after)
  // Only round a corner that points into the material is there something to join.
  if (join === 'square' && turn < 0 && cosine <= flattestSquare) {
    const reach = by * Math.tan(Math.atan2(-turn, cosine) / 4)
    const foot = ([x, y]: Point): Point => [point[0] - y * by, point[1] + x * by]
    return [plus(foot(before), times(before, reach)), minus(foot(after), times(after, reach))]
  }
  const share = by / (1 + cosine)
  return [[point[0] - (before[1] + after[1]) * share, point[1] + (before[0] + after[0]) * share]]
}

function unit(a: Point, b: Point): Point {
  const length = distance(a, b)
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
}
