import type { Path, Point } from '../geometry/index.js'
import type { Metres, Radians } from '../quantity/index.js'

/** One straight or circular piece of a path with what motion needs of it. */
export interface Segment {
  readonly from: Point
  readonly to: Point
  readonly bulge: number
  readonly length: Metres
  /** Included angle, positive turning left; 0 for a straight piece. */
  readonly sweep: Radians
  /** Infinite for a straight piece. */
  readonly radius: Metres
  /** Direction of travel where the piece begins, −π…π; the end's is this plus `sweep`. */
  readonly heading: Radians
}

export function segmentOf(from: Point, to: Point, bulge: number): Segment {
  const chord = distance(from, to)
  const chordHeading = Math.atan2(to[1] - from[1], to[0] - from[0])
  if (bulge === 0)
    return {
      from,
      to,
      bulge,
      length: chord,
      sweep: 0,
      radius: Number.POSITIVE_INFINITY,
      heading: chordHeading,
    }
  const sweep = 4 * Math.atan(bulge)
  const radius = (chord * (1 + bulge ** 2)) / (4 * Math.abs(bulge))
  return {
    from,
    to,
    bulge,
    length: radius * Math.abs(sweep),
    sweep,
    radius,
    heading: chordHeading - sweep / 2,
  }
}

/** Paths never change: each is taken to pieces once, and the pieces are forgotten with it. */
const known = new WeakMap<Path, readonly Segment[]>()

/** The pieces of a path in order; the closing piece last. */
export function segmentsOf(path: Path): readonly Segment[] {
  const before = known.get(path)
  if (before) return before
  const segments = path.bulges.map((bulge, i) =>
    segmentOf(path.points[i]!, path.points[(i + 1) % path.points.length]!, bulge),
  )
  known.set(path, segments)
  return segments
}

/** Centre of a circular piece. */
export function centreOf({ from, heading, radius, sweep }: Segment): Point {
  const left = Math.sign(sweep)
  return [from[0] - left * radius * Math.sin(heading), from[1] + left * radius * Math.cos(heading)]
}

/** The point at a share 0…1 of a piece's length. */
export function pointAt(segment: Segment, share: number): Point {
  const { from, to } = segment
  if (segment.sweep === 0) return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
  const centre = centreOf(segment)
  const angle = share * segment.sweep
  const [x, y] = [from[0] - centre[0], from[1] - centre[1]]
  return [
    centre[0] + x * Math.cos(angle) - y * Math.sin(angle),
    centre[1] + x * Math.sin(angle) + y * Math.cos(angle),
  ]
}

/** Bulge of the first `share` of an arc. */
export const partBulge = (bulge: number, share: number): number => Math.tan(share * Math.atan(bulge))

/** The root itself: metres neither overflow nor vanish, and `hypot` takes several times as long. */
export const distance = (a: Point, b: Point): Metres => Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2)

/** The same direction within −π…π. */
export const wrapped = (angle: Radians): Radians => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI))
