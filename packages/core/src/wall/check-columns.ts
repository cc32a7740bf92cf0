import type { Column, Opening, Wall } from '../job/index.js'
import type { Units } from '../limit/index.js'
import type { Metres } from '../quantity/index.js'
import type { Problem } from '../result/index.js'
import { drawn, hostWall, outsideAlong, problem, sayLength, sayThickness } from './check-words.js'
import { findJunctions, type Junction } from './junction.js'
import { wallsMet } from './met-wall.js'
import type { WallParts } from './parts.js'

export function checkColumns({ walls, columns, openings, print, units }: WallParts): readonly Problem[] {
  const junctions = findJunctions(walls.filter(({ centreline }) => centreline.bulges.length > 0))
  return columns.flatMap((column, i) => {
    const at = `columns[${i}]`
    const host = hostWall(walls, column, at, 'Column')
    if ('code' in host) return [host]
    const { id, length, thickness } = column
    const { wall } = host
    const problems = [...outsideAlong(column, length, host, at, 'Column', 'column/outside-wall', units)]
    if (length <= 0)
      problems.push(
        problem(
          'column/no-length',
          `${at}.length`,
          `Column ${id} is ${sayLength(length, units)} long; give it a length.`,
        ),
      )
    if (thickness < wall.thickness - drawn)
      problems.push(
        problem(
          'column/thinner-than-wall',
          `${at}.thickness`,
          `Column ${id} is ${sayThickness(thickness, units)} thick in a wall of ${sayThickness(wall.thickness, units)}; a column is as thick as its wall or a pier.`,
        ),
      )
    if (wall.makeUp.kind !== 'double')
      problems.push(
        problem(
          'column/no-cavity',
          `${at}.wall`,
          `Column ${id} is cast into wall ${wall.id}, which has no cavity; make the wall double.`,
        ),
      )
    const met = openings.filter(
      opening => opening.wall === wall.id && meets(column, opening, print.beadWidth),
    )
    return [
      ...problems,
      ...met.map(opening => inOpening(column, opening, at)),
      ...inJunction(column, wall, junctions, print.beadWidth, at, units),
    ]
  })
}

/** The column with the cross tie on each side of it. */
const meets = (column: Column, opening: Opening, beadWidth: number): boolean =>
  Math.abs(column.at - opening.at) < (column.length + opening.width) / 2 + beadWidth - drawn

const inOpening = (column: Column, opening: Opening, at: string): Problem =>
  problem(
    'column/in-opening',
    `${at}.at`,
    `Column ${column.id} and its cross ties reach into opening ${opening.id}; move one of them.`,
  )

/** Where another wall lands its cavity would take the pour, and a pier would stand in its foot. */
function inJunction(
  { id, at: middle, length }: Column,
  { id: on, base, top }: Wall,
  junctions: readonly Junction[],
  crossTie: Metres,
  at: string,
  units?: Units,
): readonly Problem[] {
  const span = { wall: on, at: middle, width: length, bottom: base, top }
  return wallsMet(span, junctions, crossTie).map(({ wall, station }) =>
    problem(
      'column/in-junction',
      `${at}.at`,
      `Column ${id} and its cross ties reach into wall ${wall.id}, which meets wall ${on} at ${sayLength(station, units)}; move one of them.`,
    ),
  )
}
