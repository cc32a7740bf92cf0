import { difference, type Region, type Ring, unionRings } from '../geometry/index.js'
import type { Column, PrintRules, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { standsAt } from './parts.js'
import { shellKey } from './precedence.js'
import { facesAt } from './relief.js'
import type { PlacedStretch, SectionPlan } from './section-plan.js'
import { foreignRings, shellPatches } from './shell-patch.js'
import { lateralStrip, wallStrips } from './strip.js'

/** Walls of one section that are printed alike, joined at their junctions, before anything is cut out. */
export interface Shell {
  readonly kind: Wall['makeUp']['kind']
  /** Of solid walls, which fill by thickness; else of the first wall. */
  readonly thickness: Metres
  readonly stretches: readonly PlacedStretch[]
  readonly region: Region
  /** What it was cut back to: walls that come before it, here or in other sections. */
  readonly butts: Region
}

/**
 * The section's walls at a height, double before solid before single; the later butt against the earlier. A single bead
 * runs on past the rounded corners of the walls it meets, so it is cut back to those walls as they are `finished`.
 */
export function shellsAt(
  plan: SectionPlan,
  columns: readonly Column[],
  print: PrintRules,
  z: Metres,
  finished: (region: Region) => Region,
): readonly Shell[] {
  const standing = plan.stretches.filter(({ wall }) => standsAt(wall, z))
  const keys = [...new Set(standing.map(({ wall }) => shellKey(wall)))].sort()
  const patches = shellPatches(plan, standing, z)
  const foreign = unionRings(foreignRings(plan, z))
  const shells: Shell[] = []
  for (const key of keys) {
    const stretches = standing.filter(({ wall }) => shellKey(wall) === key)
    const rings = [
      ...stretches.flatMap(({ wall, from, to }) => {
        const { low, high } = facesAt(wall, z)
        return wallStrips(wall.centreline, from, to, low, high)
      }),
      ...stretches.flatMap(stretch => pierRings(stretch, columns, print)),
      ...patches.filter(patch => patch.key === key).map(patch => patch.ring),
    ]
    const { makeUp, thickness } = stretches[0]!.wall
    const taken = [foreign, ...shells.map(shell => shell.region)]
      .filter(region => region.length > 0)
      .map(region => (makeUp.kind === 'single' ? finished(region) : region))
    const whole = unionRings(rings)
    shells.push({
      kind: makeUp.kind,
      thickness,
      stretches,
      region: taken.length ? difference(whole, ...taken) : whole,
      butts: taken.flat(),
    })
  }
  return shells
}

/** A column thicker than its wall makes a pier that takes in the cross ties on both its sides. */
function pierRings(
  { wall, from, to }: PlacedStretch,
  columns: readonly Column[],
  print: PrintRules,
): readonly Ring[] {
  return columns
    .filter(column => column.wall === wall.id && column.thickness > wall.thickness + 1e-6)
    .flatMap(({ at, length, thickness }) => {
      const half = length / 2 + print.beadWidth
      const [start, end] = [Math.max(from, at - half), Math.min(to, at + half)]
      return end - start > 1e-6
        ? [lateralStrip(wall.centreline, start, end, -thickness / 2, thickness / 2)]
        : []
    })
}
