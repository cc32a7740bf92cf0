import type { Metres, Radians } from '../quantity/index.js'
import type { Path, Point } from './path.js'
import { distance, dot, leftOf, minus, plus, size, times, turnBetween } from './point.js'
import {
  arcOf,
  isStraight,
  nearestShare,
  type Segment,
  segmentLength,
  segmentPart,
  segmentPoint,
  segmentsOf,
  segmentTangent,
} from './segment.js'

/** Corners that turn less are left alone: chords of a curve, not corners. */
export const leastCorner: Radians = 0.17

/**
 * Rounds the corners of a path: lines and arcs alike get a tangent arc between them. `radiusAt` answers for the turn of
 * a corner (left positive); 0 keeps it sharp. Where a segment is too short the radius shrinks until the arc fits into
 * half of it, so that the next corner has the other half.
 */
export function filletPath(path: Path, radiusAt: (turn: Radians, corner: Point) => Metres): Path {
  const segments = segmentsOf(path)
  const from: number[] = segments.map(() => 0)
  const to: number[] = segments.map(() => 1)
  const arcs: (Segment | undefined)[] = segments.map(() => undefined)
  segments.forEach((after, i) => {
    const k = i > 0 ? i - 1 : path.closed ? segments.length - 1 : -1
    const before = segments[k]
    if (!before || k === i) return
    const turn = turnBetween(segmentTangent(before, 1), segmentTangent(after, 0))
    const radius = Math.abs(turn) < leastCorner ? 0 : radiusAt(turn, after.start)
    const round = radius > 0 ? fittedFillet(before, after, turn, radius) : undefined
    if (!round) return
    ;[to[k], from[i], arcs[i]] = [round.leave, round.enter, round.arc]
  })
  return assemble(segments, from, to, arcs, path.closed)
}

interface Fillet {
  readonly leave: number
  readonly enter: number
  readonly arc: Segment
}

/** Halves the radius until the fillet fits; a corner too tight for a tenth of the radius stays sharp. */
function fittedFillet(before: Segment, after: Segment, turn: Radians, wanted: Metres): Fillet | undefined {
  const straight = isStraight(before) && isStraight(after)
  const room = Math.min(segmentLength(before), segmentLength(after)) / 2
  // Between straight lines the tangent length is R·tan(turn/2), so the radius that fits is known.
  const start = straight ? Math.min(wanted, (room / Math.tan(Math.abs(turn) / 2)) * 0.999) : wanted
  for (let radius = start; radius > start / 10; radius *= 0.8) {
    const round = fillet(before, after, turn, radius)
    if (round && round.leave >= 0.5 && round.enter <= 0.5) return round
  }
  return undefined
}

function fillet(before: Segment, after: Segment, turn: Radians, radius: Metres): Fillet | undefined {
  const side = Math.sign(turn) * radius
  const corner = before.end
  const centre = nearestOf(corner, offsetMeetings(carrier(before, 1, side), carrier(after, 0, side)))
  if (!centre) return undefined
  const [leave, enter] = [nearestShare(before, centre), nearestShare(after, centre)]
  const [start, end] = [segmentPoint(before, leave), segmentPoint(after, enter)]
  if (Math.abs(distance(start, centre) - radius) > 1e-7 || Math.abs(distance(end, centre) - radius) > 1e-7)
    return undefined
  const sweep = turnBetween(minus(start, centre), minus(end, centre))
  return sweep * turn > 0 ? { leave, enter, arc: { start, end, bulge: Math.tan(sweep / 4) } } : undefined
}

/** The full line or circle a segment lies on, shifted to the left: centres of tangent arcs lie on it. */
type Carrier =
  | { readonly kind: 'line'; readonly through: Point; readonly along: Point }
  | { readonly kind: 'circle'; readonly centre: Point; readonly radius: Metres }

function carrier(segment: Segment, share: number, side: Metres): Carrier {
  if (isStraight(segment)) {
    const along = segmentTangent(segment, share)
    return { kind: 'line', through: plus(segment.start, times(leftOf(along), side)), along }
  }
  const { centre, radius, sweep } = arcOf(segment)
  return { kind: 'circle', centre, radius: radius - Math.sign(sweep) * side }
}

function offsetMeetings(a: Carrier, b: Carrier): readonly Point[] {
  if (a.kind === 'line' && b.kind === 'line') {
    const slant = a.along[0] * b.along[1] - a.along[1] * b.along[0]
    const apart = minus(b.through, a.through)
    return Math.abs(slant) < 1e-12
      ? []
      : [plus(a.through, times(a.along, (apart[0] * b.along[1] - apart[1] * b.along[0]) / slant))]
  }
  if (a.kind === 'line' && b.kind === 'circle') return lineWithCircle(a, b)
  if (a.kind === 'circle' && b.kind === 'line') return lineWithCircle(b, a)
  return a.kind === 'circle' && b.kind === 'circle' ? circleWithCircle(a, b) : []
}

function lineWithCircle(
  line: Carrier & { kind: 'line' },
  circle: Carrier & { kind: 'circle' },
): readonly Point[] {
  const foot = plus(line.through, times(line.along, dot(minus(circle.centre, line.through), line.along)))
  const half = circle.radius ** 2 - distance(foot, circle.centre) ** 2
  if (half < 0 || circle.radius <= 0) return []
  return [plus(foot, times(line.along, Math.sqrt(half))), plus(foot, times(line.along, -Math.sqrt(half)))]
}

function circleWithCircle(
  a: Carrier & { kind: 'circle' },
  b: Carrier & { kind: 'circle' },
): readonly Point[] {
  const apart = minus(b.centre, a.centre)
  const span = size(apart)
  if (span < 1e-12 || a.radius <= 0 || b.radius <= 0) return []
  const foot = (span ** 2 + a.radius ** 2 - b.radius ** 2) / (2 * span)
  const half = a.radius ** 2 - foot ** 2
  if (half < 0) return []
  const middle = plus(a.centre, times(apart, foot / span))
  const reach = times(leftOf(apart), Math.sqrt(half) / span)
  return [plus(middle, reach), minus(middle, reach)]
}

const nearestOf = (target: Point, points: readonly Point[]): Point | undefined =>
  points.reduce<Point | undefined>(
    (best, point) => (best && distance(best, target) <= distance(point, target) ? best : point),
    undefined,
  )

function assemble(
  segments: readonly Segment[],
  from: readonly number[],
  to: readonly number[],
  arcs: readonly (Segment | undefined)[],
  closed: boolean,
): Path {
  const parts = segments.flatMap((segment, i) => {
    const rest = from[i]! > 0 || to[i]! < 1 ? segmentPart(segment, from[i]!, to[i]!) : segment
    const arc = arcs[i]
    return arc ? [arc, rest] : [rest]
  })
  const points = parts.map(part => part.start)
  if (!closed) points.push(parts.at(-1)!.end)
  return { points, bulges: parts.map(part => part.bulge), closed }
}
