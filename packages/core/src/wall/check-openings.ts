import type { Opening } from '../job/index.js'
import type { Units } from '../limit/index.js'
import type { Problem } from '../result/index.js'
import { checkJambs } from './check-jambs.js'
import { drawn, hostWall, outsideAlong, problem, sayLength } from './check-words.js'
import { findJunctions } from './junction.js'
import type { WallParts } from './parts.js'

export function checkOpenings(parts: WallParts): readonly Problem[] {
  const junctions = findJunctions(parts.walls.filter(({ centreline }) => centreline.bulges.length > 0))
  return parts.openings.flatMap((opening, i) => [
    ...checkOpening(parts, opening, `openings[${i}]`),
    ...checkJambs(parts, opening, junctions, `openings[${i}]`),
    ...parts.openings.slice(0, i).flatMap(other => overlap(other, opening, `openings[${i}]`, parts.units)),
  ])
}

function checkOpening({ walls, units }: WallParts, opening: Opening, at: string): readonly Problem[] {
  const host = hostWall(walls, opening, at, 'Opening')
  if ('code' in host) return [host]
  const { id, width, sill, head, lintel } = opening
  const { wall } = host
  const problems = [...outsideAlong(opening, width, host, at, 'Opening', 'opening/outside-wall', units)]
  if (width <= 0)
    problems.push(
      problem(
        'opening/no-width',
        `${at}.width`,
        `Opening ${id} is ${sayLength(width, units)} wide; give it a width.`,
      ),
    )
  if (sill >= head)
    problems.push(
      problem(
        'opening/upside-down',
        `${at}.head`,
        `Opening ${id} has its sill at ${sayLength(sill, units)} and its head at ${sayLength(head, units)}; the head must lie above the sill.`,
      ),
    )
  if (head > wall.top + drawn)
    problems.push(
      problem(
        'opening/above-wall',
        `${at}.head`,
        `Opening ${id} ends at ${sayLength(head, units)}, above the top of wall ${wall.id} at ${sayLength(wall.top, units)}.`,
      ),
    )
  if (sill < wall.base - drawn)
    problems.push(
      problem(
        'opening/below-wall',
        `${at}.sill`,
        `Opening ${id} starts at ${sayLength(sill, units)}, below the base of wall ${wall.id} at ${sayLength(wall.base, units)}.`,
      ),
    )
  if (lintel && (lintel.height <= 0 || lintel.bearing <= 0))
    problems.push(
      problem(
        'opening/lintel-size',
        `${at}.lintel`,
        `The lintel of ${id} is ${sayLength(lintel.height, units)} high and bears on ${sayLength(lintel.bearing, units)}; both must be more than 0.`,
      ),
    )
  return problems
}

function overlap(a: Opening, b: Opening, at: string, units?: Units): readonly Problem[] {
  if (a.wall !== b.wall) return []
  const along = (a.width + b.width) / 2 - Math.abs(a.at - b.at)
  const top = ({ head, lintel }: Opening) => head + (lintel?.height ?? 0)
  const upward = Math.min(top(a), top(b)) - Math.max(a.sill, b.sill)
  if (along <= drawn || upward <= drawn) return []
  return [
    problem(
      'opening/overlap',
      at,
      `Openings ${a.id} and ${b.id} overlap by ${sayLength(along, units)} along wall ${a.wall}; lintels count as part of them. Move one.`,
    ),
  ]
}
