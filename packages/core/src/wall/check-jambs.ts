import { cross, dot, leastCorner, pathLength } from '../geometry/index.js'
import type { Opening } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import type { Problem } from '../result/index.js'
import { drawn, metres, problem } from './check-words.js'
import { cornersOf, innerReach } from './corner.js'
import type { Arm, Junction } from './junction.js'
import type { WallParts } from './parts.js'

/** What is left of the wall beside an opening holds a bead: before walls that meet its own, and before its corners. */
export const checkJambs = (
  parts: WallParts,
  opening: Opening,
  junctions: readonly Junction[],
  at: string,
): readonly Problem[] => [
  ...inJunction(opening, junctions, parts.print.beadWidth, at),
  ...atCorner(parts, opening, at),
]

/** An opening that ends beside a corner of its wall, before or after it, with no jamb of one bead between. */
function atCorner({ walls, print }: WallParts, { id, wall: on, at: middle, width }: Opening, at: string) {
  const wall = walls.find(other => other.id === on)
  if (!wall || wall.centreline.bulges.length === 0) return []
  const ends = [middle - width / 2, middle + width / 2]
  return cornersOf(wall.centreline, leastCorner).flatMap(({ station, turn }): readonly Problem[] => {
    const inner = innerReach(wall.thickness, turn)
    // Within the opening the corner itself may be open, but not end on the inner face.
    const inside = ends[0]! < station && station < ends[1]!
    const least = inner + (inside ? 0 : print.beadWidth)
    const away = Math.min(...ends.map(end => Math.abs(end - station)))
    if (away >= least - drawn) return []
    return [
      problem(
        'opening/at-corner',
        `${at}.at`,
        `Opening ${id} ends ${metres(away)} from the corner of wall ${on} at ${metres(station)}, which leaves no jamb; keep ${metres(least)} from it.`,
      ),
    ]
  })
}

/** An opening that reaches into a wall that meets its own, or leaves no jamb of one bead beside it. */
function inJunction(
  opening: Opening,
  junctions: readonly Junction[],
  jamb: Metres,
  at: string,
): readonly Problem[] {
  return junctions.flatMap(({ arms }) => {
    const own = arms.find(({ wall }) => wall.id === opening.wall)
    const met = own && arms.find(other => other.wall !== own.wall && reaches(opening, own, other, jamb))
    return met
      ? [
          problem(
            'opening/in-junction',
            `${at}.at`,
            `Opening ${opening.id} leaves no jamb beside wall ${met.wall.id}, which meets wall ${opening.wall} at ${metres(own.station)}; move one of them.`,
          ),
        ]
      : []
  })
}

/** An arm takes up its own width where it leaves the junction, and where it comes out of the wall's face. */
function reaches(opening: Opening, own: Arm, other: Arm, jamb: Metres): boolean {
  if (other.wall.base >= opening.head || other.wall.top <= opening.sill) return false
  const [sine, cosine] = [Math.abs(cross(own.out, other.out)), dot(own.out, other.out)]
  const slanting = sine >= 0.1
  const half = slanting ? Math.min(other.wall.thickness / 2 / sine, 2 * other.wall.thickness) : 0
  const out = slanting ? Math.min(own.wall.thickness / 2 / sine, armLength(other)) * cosine * own.sense : 0
  const [from, to] = [own.station + Math.min(0, out) - half, own.station + Math.max(0, out) + half]
  const beside = opening.width / 2 + jamb - drawn
  return from - beside < opening.at && opening.at < to + beside
}

const armLength = ({ wall, station, sense }: Arm): Metres =>
  sense < 0 || wall.centreline.closed ? station : pathLength(wall.centreline) - station
