import type { Column, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { embedAt } from './embed-at.js'
import { standsAt, type WallParts } from './parts.js'
import { liesAt, opensAt, shapesPlan } from './recess.js'
import { reliefPhase } from './relief.js'
import type { SectionPlan } from './section-plan.js'

/** Everything the plan of a section at height z depends on, written out: equal keys have equal plans. */
export function bandKey(
  { openings, embeds, columns, print }: WallParts,
  plan: SectionPlan,
  z: Metres,
): string {
  const stretches = plan.stretches.filter(({ wall }) => standsAt(wall, z))
  const own = new Set(stretches.map(({ wall }) => wall.id))
  // Walls of other sections count where they meet ours, in the order that decides who keeps the corner.
  const meeting = new Set(plan.junctions.flatMap(({ arms }) => arms.map(arm => arm.wall)))
  const walls = new Set([
    ...stretches.map(({ wall }) => wall),
    ...[...meeting].filter(wall => standsAt(wall, z)),
  ])
  const ordered = [...walls].sort((a, b) => (plan.order.get(a.id) ?? 0) - (plan.order.get(b.id) ?? 0))
  return JSON.stringify([
    [print.beadWidth, print.layerHeight, print.cornerRadius],
    ordered.map(wall => wallKey(wall, z)),
    stretches.map(({ wall, from, to }) => [wall.id, from, to]),
    openings
      .filter(({ wall }) => own.has(wall))
      .filter(opening => opensAt(opening, z))
      .map(({ id, wall, at, width }) => [id, wall, at, width]),
    embeds
      .filter(embed => own.has(embed.wall) && liesAt(embed, z) && shapesPlan(embed))
      .map(embed => embedAt(embed, z, print))
      .map(({ id, wall, kind, face, at, width, depth, method }) => [
        id,
        wall,
        kind,
        face,
        at,
        width,
        depth,
        method,
      ]),
    columns.filter(({ wall }) => own.has(wall)).map(columnKey),
  ])
}

/** A wall as drawn, written out once: every band asks for it again. */
const drawnKeys = new WeakMap<Wall, string>()

function wallKey(wall: Wall, z: Metres): readonly [string, number] {
  const known = drawnKeys.get(wall) ?? drawnKey(wall)
  drawnKeys.set(wall, known)
  return [known, reliefPhase(wall, z)]
}

const drawnKey = ({ id, centreline, makeUp, thickness, relief }: Wall): string =>
  JSON.stringify([id, centreline.points, centreline.bulges, centreline.closed, makeUp, thickness, relief])

const columnKey = ({ wall, at, length, thickness }: Column) => [wall, at, length, thickness]
