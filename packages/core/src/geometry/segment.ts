import type { Metres, Radians } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { Path, Point } from './path.js'
import {
  between,
  cross,
  direction,
  distance,
  dot,
  leftOf,
  minus,
  plus,
  size,
  times,
  towards,
} from './point.js'

/** One link of a path: straight when its bulge is 0, else a circular arc. */
export interface Segment {
  readonly start: Point
  readonly end: Point
  readonly bulge: number
}

export interface Arc {
  readonly centre: Point
  readonly radius: Metres
  /** Direction from the centre to the start. */
  readonly from: Radians
  /** Included angle, positive turning left. */
  readonly sweep: Radians
}

/** Below this bulge the arc's rise is under a ten-millionth of its chord: straight. */
const straightBulge = 2e-7

export function segmentsOf(path: Path): readonly Segment[] {
  const { points, bulges, closed } = path
  assert(bulges.length === Math.max(0, points.length - (closed ? 0 : 1)), 'a path has one bulge per segment')
  return bulges.map((bulge, i) => ({ start: points[i]!, end: points[(i + 1) % points.length]!, bulge }))
}

export const isStraight = (segment: Segment): boolean => Math.abs(segment.bulge) < straightBulge

export function arcOf({ start, end, bulge }: Segment): Arc {
  const sweep = 4 * Math.atan(bulge)
  const chord = distance(start, end)
  const rise = ((1 - bulge * bulge) / (4 * bulge)) * chord
  const centre = plus(between(start, end, 0.5), times(leftOf(towards(start, end)), rise))
  return {
    centre,
    radius: (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    from: Math.atan2(start[1] - centre[1], start[0] - centre[0]),
    sweep,
  }
}

export function segmentLength(segment: Segment): Metres {
  if (isStraight(segment)) return distance(segment.start, segment.end)
  const arc = arcOf(segment)
  return arc.radius * Math.abs(arc.sweep)
}

/** The point a share 0–1 of the way along. */
export function segmentPoint(segment: Segment, share: number): Point {
  if (share <= 0) return segment.start
  if (share >= 1) return segment.end
  if (isStraight(segment)) return between(segment.start, segment.end, share)
  const { centre, radius, from, sweep } = arcOf(segment)
  return plus(centre, times(direction(from + sweep * share), radius))
}

/** Unit vector along the segment, a share 0–1 of the way. */
export function segmentTangent(segment: Segment, share: number): Point {
  if (isStraight(segment)) return towards(segment.start, segment.end)
  const { from, sweep } = arcOf(segment)
  return direction(from + sweep * share + (Math.sign(sweep) * Math.PI) / 2)
}

/** The part between two shares of the way; an arc stays an arc. */
export function segmentPart(segment: Segment, from: number, to: number): Segment {
  const bulge = isStraight(segment) ? 0 : Math.tan(Math.atan(segment.bulge) * (to - from))
  return { start: segmentPoint(segment, from), end: segmentPoint(segment, to), bulge }
}

/** The share of the way at which the segment comes closest to a point. */
export function nearestShare(segment: Segment, point: Point): number {
  if (isStraight(segment)) {
    const along = minus(segment.end, segment.start)
    const lengthSquared = dot(along, along)
    return lengthSquared > 0 ? clampShare(dot(minus(point, segment.start), along) / lengthSquared) : 0
  }
  const { centre, from, sweep } = arcOf(segment)
  const angle = Math.atan2(point[1] - centre[1], point[0] - centre[0])
  const turned = positiveTurn((angle - from) * Math.sign(sweep))
  if (turned <= Math.abs(sweep)) return turned / Math.abs(sweep)
  return distance(point, segment.start) <= distance(point, segment.end) ? 0 : 1
}

/** Shares of the way along a and b at which they meet; overlapping stretches report their ends. */
export function segmentMeetings(a: Segment, b: Segment): readonly (readonly [number, number])[] {
  const straight = [isStraight(a), isStraight(b)]
  if (straight[0] && straight[1]) return lineMeetings(a, b)
  const points = straight[0]
    ? lineCircle(a, arcOf(b))
    : straight[1]
      ? lineCircle(b, arcOf(a))
      : circleCircle(arcOf(a), arcOf(b))
  return points.flatMap(point => sharedShares(a, b, point))
}

function sharedShares(a: Segment, b: Segment, point: Point): readonly (readonly [number, number])[] {
  const shares = [nearestShare(a, point), nearestShare(b, point)] as const
  const off = Math.max(
    distance(segmentPoint(a, shares[0]), point),
    distance(segmentPoint(b, shares[1]), point),
  )
  return off <= 1e-9 * (1 + size(point)) ? [shares] : []
}

function lineMeetings(a: Segment, b: Segment): readonly (readonly [number, number])[] {
  const along = minus(a.end, a.start)
  const across = minus(b.end, b.start)
  const slant = cross(along, across)
  if (Math.abs(slant) <= 1e-12 * size(along) * size(across))
    return [a.start, a.end, b.start, b.end].flatMap(point => sharedShares(a, b, point))
  const apart = minus(b.start, a.start)
  const shares = [cross(apart, across) / slant, cross(apart, along) / slant] as const
  return shares.every(share => share > -1e-12 && share < 1 + 1e-12)
    ? [[clampShare(shares[0]), clampShare(shares[1])]]
    : []
}

function lineCircle(line: Segment, { centre, radius }: Arc): readonly Point[] {
  const along = towards(line.start, line.end)
  const foot = plus(line.start, times(along, dot(minus(centre, line.start), along)))
  const half = radius * radius - distance(foot, centre) ** 2
  if (half < -1e-12) return []
  const reach = Math.sqrt(Math.max(0, half))
  return reach === 0 ? [foot] : [plus(foot, times(along, reach)), plus(foot, times(along, -reach))]
}

function circleCircle(a: Arc, b: Arc): readonly Point[] {
  const apart = distance(a.centre, b.centre)
  if (apart < 1e-12) return []
  const foot = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart)
  const half = a.radius * a.radius - foot * foot
  if (half < -1e-12) return []
  const along = towards(a.centre, b.centre)
  const middle = plus(a.centre, times(along, foot))
  const reach = times(leftOf(along), Math.sqrt(Math.max(0, half)))
  return [plus(middle, reach), minus(middle, reach)]
}

const clampShare = (share: number): number => Math.min(1, Math.max(0, share))
const positiveTurn = (angle: Radians): Radians => {
  const turned = angle % (2 * Math.PI)
  return turned < 0 ? turned + 2 * Math.PI : turned
}
