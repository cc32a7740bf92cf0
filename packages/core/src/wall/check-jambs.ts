import { leastCorner } from '../geometry/index.js'
import type { Opening } from '../job/index.js'
import type { Units } from '../limit/index.js'
import type { Metres } from '../quantity/index.js'
import type { Problem } from '../result/index.js'
import { drawn, problem, sayLength } from './check-words.js'
import { cornersOf, innerReach } from './corner.js'
import type { Junction } from './junction.js'
import { wallsMet } from './met-wall.js'
import type { WallParts } from './parts.js'

/** What is left of the wall beside an opening holds a bead: before walls that meet its own, and before its corners. */
export const checkJambs = (
  parts: WallParts,
  opening: Opening,
  junctions: readonly Junction[],
  at: string,
): readonly Problem[] => [
  ...inJunction(opening, junctions, parts.print.beadWidth, at, parts.units),
  ...atCorner(parts, opening, at),
]

/** An opening that ends beside a corner of its wall, before or after it, with no jamb of one bead between. */
function atCorner(
  { walls, print, units }: WallParts,
  { id, wall: on, at: middle, width }: Opening,
  at: string,
) {
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
        `Opening ${id} ends ${sayLength(away, units)} from the corner of wall ${on} at ${sayLength(station, units)}, which leaves no jamb; keep ${sayLength(least, units)} from it.`,
      ),
    ]
  })
}

/** An opening that reaches into a wall that meets its own, or leaves no jamb of one bead beside it. */
const inJunction = (
  { id, wall: on, at: middle, width, sill, head }: Opening,
  junctions: readonly Junction[],
  jamb: Metres,
  at: string,
  units?: Units,
): readonly Problem[] =>
  wallsMet({ wall: on, at: middle, width, bottom: sill, top: head }, junctions, jamb).map(
    ({ wall, station }) =>
      problem(
        'opening/in-junction',
        `${at}.at`,
        `Opening ${id} leaves no jamb beside wall ${wall.id}, which meets wall ${on} at ${sayLength(station, units)}; move one of them.`,
      ),
  )
