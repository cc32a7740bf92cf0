import type { Path, Point } from '../geometry/index.js'
import { centreOf, distance, partBulge, pointAt, type Segment, segmentsOf } from './segment.js'

/** A place on a path: on which piece, at which share of its length. */
export interface Place {
  readonly segment: number
  readonly share: number
  readonly point: Point
}

/** Points nearer than this are one point; ten times finer than a machine file writes. */
const samePoint = 1e-8

export const reversed = (path: Path): Path => {
  const points = [...path.points].reverse()
  const bulges = path.bulges.map(bulge => (bulge === 0 ? 0 : -bulge)).reverse()
  if (!path.closed) return { points, bulges, closed: false }
  // the closing piece was last and comes first now: begin at the point it leads away from
  return { points: [points.at(-1)!, ...points.slice(0, -1)], bulges, closed: true }
}

/** The loop cut open at a place: an open path that ends where it starts. */
export function openedAt(loop: Path, place: Place): Path {
  const bulges = loop.bulges
  const order = bulges.map((_, i) => (place.segment + i) % bulges.length)
  const cut = bulges[place.segment]!
  const points = order.slice(1).map(i => loop.points[i]!)
  if (place.share === 0)
    return {
      points: [place.point, ...points, place.point],
      bulges: order.map(i => bulges[i]!),
      closed: false,
    }
  return {
    points: [place.point, ...points, loop.points[place.segment]!, place.point],
    bulges: [
      partBulge(cut, 1 - place.share),
      ...order.slice(1).map(i => bulges[i]!),
      partBulge(cut, place.share),
    ],
    closed: false,
  }
}

/** An open path with a straight piece from `start` in front. */
export const ledInFrom = (start: Point, path: Path): Path => ({
  points: [start, ...path.points],
  bulges: [0, ...path.bulges],
  closed: false,
})

/** The place on a path nearest to a point; a place at a corner is that corner. */
export function nearestPlace(path: Path, point: Point): Place & { readonly distance: number } {
  const segments = segmentsOf(path)
  let [best, bestShare, least] = [0, 0, Number.POSITIVE_INFINITY]
  for (let i = 0; i < segments.length; i++) {
    const segment = segments[i]!
    // No point of a piece is farther from its start than the piece is long.
    if (distance(segment.from, point) - segment.length > least) continue
    const share = nearestShare(segment, point)
    const away = distance(pointAt(segment, share), point)
    if (away < least - 1e-12) [best, bestShare, least] = [i, share, away]
  }
  return { ...settled(path, best, bestShare, segments[best]!), distance: least }
}

/** Without pieces too short to run; such pieces come out of offsetting and clipping. */
export function withoutTinyPieces(path: Path): Path {
  const keep = segmentsOf(path).map(segment => segment.length > samePoint)
  if (keep.every(Boolean)) return path
  const points: Point[] = []
  const bulges: number[] = []
  path.bulges.forEach((bulge, i) => {
    if (!keep[i]) return
    points.push(path.points[i]!)
    bulges.push(bulge)
  })
  return { points: path.closed ? points : [...points, path.points.at(-1)!], bulges, closed: path.closed }
}

/** Cutting a piece within a millimetre of its end would leave a sliver: take the end. */
function settled(path: Path, index: number, share: number, segment: Segment): Place {
  const sliver = 1e-3 / segment.length
  if (share <= sliver) return { segment: index, share: 0, point: segment.from }
  if (share < 1 - sliver) return { segment: index, share, point: pointAt(segment, share) }
  const next = index + 1 === path.bulges.length && path.closed ? 0 : index + 1
  return { segment: next, share: 0, point: segment.to }
}

function nearestShare(segment: Segment, [x, y]: Point): number {
  const { from, to, sweep } = segment
  if (sweep === 0) {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
    const along = ((x - from[0]) * dx + (y - from[1]) * dy) / (dx * dx + dy * dy)
    return Math.min(1, Math.max(0, along))
  }
  const centre = centreOf(segment)
  const startAngle = Math.atan2(from[1] - centre[1], from[0] - centre[0])
  const turn = (Math.atan2(y - centre[1], x - centre[0]) - startAngle) * Math.sign(sweep)
  const share = (turn - 2 * Math.PI * Math.floor(turn / (2 * Math.PI))) / Math.abs(sweep)
  if (share <= 1) return share
  return distance(from, [x, y]) <= distance(to, [x, y]) ? 0 : 1
}
