import { cross, dot, pathLength } from '../geometry/index.js'
import type { Opening } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import type { Problem } from '../result/index.js'
import { drawn, hostWall, metres, outsideAlong, problem } from './check-words.js'
import { type Arm, findJunctions, type Junction } from './junction.js'
import type { WallParts } from './parts.js'

export function checkOpenings(parts: WallParts): readonly Problem[] {
  const junctions = findJunctions(parts.walls.filter(({ centreline }) => centreline.bulges.length > 0))
  return parts.openings.flatMap((opening, i) => [
    ...checkOpening(parts, opening, `openings[${i}]`),
    ...inJunction(opening, junctions, parts.print.beadWidth, `openings[${i}]`),
    ...parts.openings.slice(0, i).flatMap(other => overlap(other, opening, `openings[${i}]`)),
  ])
}

function checkOpening({ walls }: WallParts, opening: Opening, at: string): readonly Problem[] {
  const host = hostWall(walls, opening, at, 'Opening')
  if ('code' in host) return [host]
  const { id, width, sill, head, lintel } = opening
  const { wall } = host
  const problems = [...outsideAlong(opening, width, host, at, 'Opening', 'opening/outside-wall')]
  if (width <= 0)
    problems.push(
      problem('opening/no-width', `${at}.width`, `Opening ${id} is ${metres(width)} wide; give it a width.`),
    )
  if (sill >= head)
    problems.push(
      problem(
        'opening/upside-down',
        `${at}.head`,
        `Opening ${id} has its sill at ${metres(sill)} and its head at ${metres(head)}; the head must lie above the sill.`,
      ),
    )
  if (head > wall.top + drawn)
    problems.push(
      problem(
        'opening/above-wall',
        `${at}.head`,
        `Opening ${id} ends at ${metres(head)}, above the top of wall ${wall.id} at ${metres(wall.top)}.`,
      ),
    )
  if (sill < wall.base - drawn)
    problems.push(
      problem(
        'opening/below-wall',
        `${at}.sill`,
        `Opening ${id} starts at ${metres(sill)}, below the base of wall ${wall.id} at ${metres(wall.base)}.`,
      ),
    )
  if (lintel && (lintel.height <= 0 || lintel.bearing <= 0))
    problems.push(
      problem(
        'opening/lintel-size',
        `${at}.lintel`,
        `The lintel of ${id} is ${metres(lintel.height)} high and bears on ${metres(lintel.bearing)}; both must be more than 0.`,
      ),
    )
  return problems
}

function overlap(a: Opening, b: Opening, at: string): readonly Problem[] {
  if (a.wall !== b.wall) return []
  const along = (a.width + b.width) / 2 - Math.abs(a.at - b.at)
  const top = ({ head, lintel }: Opening) => head + (lintel?.height ?? 0)
  const upward = Math.min(top(a), top(b)) - Math.max(a.sill, b.sill)
  if (along <= drawn || upward <= drawn) return []
  return [
    problem(
      'opening/overlap',
      at,
      `Openings ${a.id} and ${b.id} overlap by ${metres(along)} along wall ${a.wall}; lintels count as part of them. Move one.`,
    ),
  ]
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
