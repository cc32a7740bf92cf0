import type { Metres, Radians } from '../quantity/index.js'
import type { Path, Point } from './path.js'
import { distance, dot, leftOf, minus, plus, size, times, turnBetween } from './point.js'
import {
  arcOf,
  isStraight,
  nearestShare,
  type Segment,
  segmentPart,
  segmentPoint,
  segmentsOf,
  segmentTangent,
} from './segment.js'

/** Corners that turn less are left alone: chords of a curve, not corners. */
export const leastCorner: Radians = 0.17

/**
 * Rounds the corners of a path: lines and arcs alike get a tangent arc between them. `radiusAt` answers for the turn of
 * a corner (left positive); 0 keeps it sharp. Two corners on one segment have half of it each. An arc that does not fit
 * may swallow a short segment that runs on smoothly; else its radius shrinks until it fits.
 */
export function filletPath(path: Path, radiusAt: (turn: Radians, corner: Point) => Metres): Path {
  const segments = segmentsOf(path)
  const corners = segments.map((after, i) => cornerAt(segments, path.closed, i, after, radiusAt))
  const kept: Kept[] = segments.map(() => ({ from: 0, to: 1, dropped: false }))
  corners.forEach((corner, i) => {
    if (corner.radius <= 0) return
    const round = bestFillet(segments, corners, path.closed, i)
    if (!round) return
    kept[round.before]!.to = round.leave
    kept[round.after]!.from = round.enter
    kept[round.after]!.arc = round.arc
    for (const k of round.swallowed) kept[k]!.dropped = true
  })
  return assemble(segments, kept, path.closed)
}

/** What is left of a segment, and the arc that leads into it. */
interface Kept {
  from: number
  to: number
  dropped: boolean
  arc?: Segment
}

interface Corner {
  readonly turn: Radians
  readonly radius: Metres
}

const smooth: Corner = { turn: 0, radius: 0 }

function cornerAt(
  segments: readonly Segment[],
  closed: boolean,
  i: number,
  after: Segment,
  radiusAt: (turn: Radians, corner: Point) => Metres,
): Corner {
  const before = segments[i - 1] ?? (closed && segments.length > 1 ? segments.at(-1) : undefined)
  if (!before) return smooth
  const turn = turnBetween(segmentTangent(before, 1), segmentTangent(after, 0))
  return Math.abs(turn) < leastCorner ? smooth : { turn, radius: radiusAt(turn, after.start) }
}

interface Placed extends Fillet {
  readonly before: number
  readonly after: number
  readonly swallowed: readonly number[]
}

/** At full radius, between the neighbours or past a smooth joint on either side; else smaller between the neighbours. */
function bestFillet(
  segments: readonly Segment[],
  corners: readonly Corner[],
  closed: boolean,
  i: number,
): Placed | undefined {
  const count = segments.length
  const { turn, radius } = corners[i]!
  const index = (k: number) => (k + count) % count
  const exists = (k: number) => closed || (k >= 0 && k < count)
  const goesOn = (joint: number) =>
    exists(joint - 1) && exists(joint) && Math.abs(corners[index(joint)]!.turn) < leastCorner
  const befores = goesOn(i - 1) ? [i - 1, i - 2] : [i - 1]
  const afters = goesOn(i + 1) ? [i, i + 1] : [i]
  const within = ({ leave, enter }: Fillet, b: number, a: number) =>
    leave >= (corners[index(b)]!.radius > 0 ? 0.5 : 0.001) &&
    enter <= (corners[index(a + 1)]?.radius ? 0.5 : 0.999)
  const attempt = (b: number, a: number, size: Metres): Placed | undefined => {
    const [before, after] = [index(b), index(a)]
    if (before === after) return undefined
    const round = fillet(segments[before]!, segments[after]!, segments[index(i)]!.start, turn, size)
    if (!round || !within(round, b, a)) return undefined
    const swallowed = [...(b < i - 1 ? [index(i - 1)] : []), ...(a > i ? [index(i)] : [])]
    return { ...round, before, after, swallowed }
  }
  for (const b of befores)
    for (const a of afters) {
      const round = attempt(b, a, radius)
      if (round) return round
    }
  for (let size = radius * 0.9; size > radius / 12; size *= 0.9) {
    const round = attempt(i - 1, i, size)
    if (round) return round
  }
  return undefined
}

interface Fillet {
  readonly leave: number
  readonly enter: number
  readonly arc: Segment
}

function fillet(
  before: Segment,
  after: Segment,
  corner: Point,
  turn: Radians,
  radius: Metres,
): Fillet | undefined {
  const side = Math.sign(turn) * radius
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

function assemble(segments: readonly Segment[], kept: readonly Kept[], closed: boolean): Path {
  const parts = segments.flatMap((segment, i) => {
    const { from, to, dropped, arc } = kept[i]!
    if (dropped || to - from <= 0) return arc ? [arc] : []
    const rest = from > 0 || to < 1 ? segmentPart(segment, from, to) : segment
    return arc ? [arc, rest] : [rest]
  })
  const points = parts.map(part => part.start)
  if (!closed) points.push(parts.at(-1)!.end)
  return { points, bulges: parts.map(part => part.bulge), closed }
}
