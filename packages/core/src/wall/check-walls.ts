import { pathLength, selfCrossings } from '../geometry/index.js'
import type { PrintRules, Wall } from '../job/index.js'
import type { Units } from '../limit/index.js'
import { formatPlace } from '../quantity/index.js'
import type { Problem } from '../result/index.js'
import { pitchOfNarrowest, solidFill } from './bead-section.js'
import { checkAlongside } from './check-alongside.js'
import { checkColumns } from './check-columns.js'
import { checkEmbeds } from './check-embeds.js'
import { checkOpenings } from './check-openings.js'
import { problem, sayLength, sayThickness } from './check-words.js'
import { tieReach } from './double-wall.js'
import type { WallParts } from './parts.js'

/** Everything in the walls that cannot be built as drawn; all of it at once. */
export const checkWalls = (parts: WallParts): readonly Problem[] => [
  ...repeatedIds(parts),
  ...parts.walls.flatMap((wall, i) => checkWall(wall, `walls[${i}]`, parts)),
  ...checkAlongside(
    parts.walls.filter(({ centreline }) => centreline.bulges.length > 0),
    parts.units,
  ),
  ...checkOpenings(parts),
  ...checkEmbeds(parts),
  ...checkColumns(parts),
]

function repeatedIds({ walls, openings, embeds, columns }: WallParts): readonly Problem[] {
  return Object.entries({ walls, openings, embeds, columns }).flatMap(([list, things]) =>
    things.flatMap(({ id }, i) => {
      const first = things.findIndex(other => other.id === id)
      return first < i
        ? [
            problem(
              'wall/repeated-id',
              `${list}[${i}].id`,
              `The id ${id} is taken by ${list}[${first}]; give each its own.`,
            ),
          ]
        : []
    }),
  )
}

function checkWall(wall: Wall, at: string, parts: WallParts): readonly Problem[] {
  const { id, base, top, centreline } = wall
  const { units } = parts
  const problems: Problem[] = []
  if (centreline.bulges.length === 0 || pathLength(centreline) < 1e-3)
    return [
      problem(
        'wall/no-length',
        `${at}.centreline`,
        `Wall ${id} has no length; draw a centreline of at least two points.`,
      ),
    ]
  if (top - base <= 0)
    problems.push(
      problem(
        'wall/no-height',
        `${at}.top`,
        `Wall ${id} goes from ${sayLength(base, units)} to ${sayLength(top, units)}; its top must lie above its base.`,
      ),
    )
  for (const crossing of selfCrossings(centreline).slice(0, 1))
    problems.push(
      problem(
        'wall/crosses-itself',
        `${at}.centreline`,
        `Wall ${id} crosses itself at ${formatPlace(crossing, units ?? 'metric')}; split it into walls that meet there.`,
      ),
    )
  return [...problems, ...checkThickness(wall, at, parts), ...checkJoints(wall, at, units)]
}

function checkThickness(wall: Wall, at: string, parts: WallParts): readonly Problem[] {
  const { id, thickness, makeUp } = wall
  const { units } = parts
  const bead = parts.print.beadWidth
  const said = (code: string, say: string) => [problem(code, `${at}.thickness`, say)]
  const found = `Wall ${id} is ${sayThickness(thickness, units)} thick`
  if (makeUp.kind === 'single' && Math.abs(thickness - bead) > 1e-4)
    return said(
      'wall/not-one-bead',
      `${found}, but a single wall is one bead, ${sayThickness(bead, units)}; set one of them to the other.`,
    )
  if (makeUp.kind === 'solid' && thickness < bead - 1e-6)
    return said(
      'wall/under-one-bead',
      `${found}, less than one bead of ${sayThickness(bead, units)}; make it thicker.`,
    )
  if (makeUp.kind === 'solid') return checkFill(wall, found, parts.print, said, units)
  if (makeUp.kind !== 'double') return []
  if (thickness < 2 * bead - 1e-6)
    return said(
      'wall/under-two-beads',
      `${found}, but two wythes need ${sayThickness(2 * bead, units)}; make it thicker or solid.`,
    )
  if (tieReach(thickness, parts) < -1e-6)
    return said(
      'wall/no-room-for-tie',
      `${found}: between its wythes no tie bead fits; it needs ${sayThickness(thickness - 2 * tieReach(thickness, parts), units)} to be double, or make it solid.`,
    )
  return makeUp.webPitch > 0
    ? []
    : [
        problem(
          'wall/no-pitch',
          `${at}.makeUp.webPitch`,
          `The tie of wall ${id} has no pitch; give it a length, such as ${units === 'imperial' ? '24"' : '0.6 m'}.`,
        ),
      ]
}

/** Beads that fill a solid wall are narrower than the nozzle's own, but no narrower than they are high. */
function checkFill(
  { thickness }: Wall,
  found: string,
  { beadWidth, layerHeight }: PrintRules,
  said: (code: string, say: string) => readonly Problem[],
  units?: Units,
): readonly Problem[] {
  const { count, width } = solidFill(thickness, beadWidth, layerHeight)
  if (width >= layerHeight - 1e-9) return []
  const least = count * pitchOfNarrowest(layerHeight) + layerHeight - pitchOfNarrowest(layerHeight)
  const [own, high, needed] = [width, layerHeight, least].map(each => sayThickness(each, units))
  return said(
    'wall/no-fill',
    `${found}: ${count} beads fill it ${own} wide, but a layer is ${high} high, and a bead is no narrower than that; make it ${needed} or the layers lower.`,
  )
}

function checkJoints({ id, joints, centreline }: Wall, at: string, units?: Units): readonly Problem[] {
  const length = pathLength(centreline)
  return joints.flatMap((station, i) =>
    station > 0 && station < length
      ? []
      : [
          problem(
            'wall/joint-outside',
            `${at}.joints[${i}]`,
            `The joint at ${sayLength(station, units)} is not on wall ${id}, which is ${sayLength(length, units)} long.`,
          ),
        ],
  )
}
