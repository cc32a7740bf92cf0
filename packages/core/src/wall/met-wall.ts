import { cross, dot, pathLength } from '../geometry/index.js'
import type { Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { drawn } from './check-words.js'
import type { Arm, Junction } from './junction.js'

/** A part of a wall seen from its face: an opening, a gap or a column. */
export interface Span {
  readonly wall: string
  readonly at: Metres
  readonly width: Metres
  readonly bottom: Metres
  readonly top: Metres
  /** In one face only, left +1. */
  readonly side?: 1 | -1
}

/** A wall that meets the span's own, and where. */
export interface MetWall {
  readonly wall: Wall
  readonly station: Metres
}

/** Walls that meet the span's own within it, or nearer to it than a jamb, one to a junction. */
export const wallsMet = (span: Span, junctions: readonly Junction[], jamb: Metres): readonly MetWall[] =>
  junctions.flatMap(({ arms }) => {
    const own = arms.find(({ wall }) => wall.id === span.wall)
    const met = own && arms.find(other => other.wall !== own.wall && reaches(span, own, other, jamb))
    return met ? [{ wall: met.wall, station: own.station }] : []
  })

/** An arm takes up its own width where it leaves the junction, and where it comes out of the wall's face. */
function reaches(span: Span, own: Arm, other: Arm, jamb: Metres): boolean {
  if (other.wall.base >= span.top || other.wall.top <= span.bottom) return false
  const [across, cosine] = [cross(own.out, other.out), dot(own.out, other.out)]
  if (span.side && span.side * own.sense * across < 0) return false
  const sine = Math.abs(across)
  const slanting = sine >= 0.1
  const half = slanting ? Math.min(other.wall.thickness / 2 / sine, 2 * other.wall.thickness) : 0
  const out = slanting ? Math.min(own.wall.thickness / 2 / sine, armLength(other)) * cosine * own.sense : 0
  const [from, to] = [own.station + Math.min(0, out) - half, own.station + Math.max(0, out) + half]
  const beside = span.width / 2 + jamb - drawn
  return from - beside < span.at && span.at < to + beside
}

const armLength = ({ wall, station, sense }: Arm): Metres =>
  sense < 0 || wall.centreline.closed ? station : pathLength(wall.centreline) - station
