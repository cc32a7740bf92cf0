import {
  difference,
  distance,
  pathLength,
  pathPoint,
  pathTangent,
  pointStations,
  type Region,
  type Ring,
  times,
  unionRings,
} from '../geometry/index.js'
import type { Column, PrintRules, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { cornerPatches } from './corner-patch.js'
import type { Arm, Junction } from './junction.js'
import { standsAt } from './parts.js'
import { facesAt } from './relief.js'
import { holdsArm, type PlacedStretch, type SectionPlan } from './section-plan.js'
import { lateralStrip, stripLap, wallStrips } from './strip.js'

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

/** The section's walls at a height, double before solid before single; the later butt against the earlier. */
export function shellsAt(
  plan: SectionPlan,
  columns: readonly Column[],
  print: PrintRules,
  z: Metres,
): readonly Shell[] {
  const standing = plan.stretches.filter(({ wall }) => standsAt(wall, z))
  const keys = [...new Set(standing.map(({ wall }) => shellKey(wall)))].sort()
  const patches = [
    ...junctionPatches(plan, z),
    ...landingPatches(plan, z),
    ...standing.flatMap(vertexPatches),
  ]
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
    const taken = [foreign, ...shells.map(shell => shell.region)].filter(region => region.length > 0)
    const whole = unionRings(rings)
    const { makeUp, thickness } = stretches[0]!.wall
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

/** Sorts as the walls take precedence: double, then solid from thick to thin, then single. */
export function shellKey({ makeUp, thickness }: Wall): string {
  if (makeUp.kind !== 'solid') return makeUp.kind === 'double' ? '0' : '2'
  return `1 ${(1000 - thickness).toFixed(6)}`
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

interface Patch {
  readonly key: string
  readonly ring: Ring
}

/** Corners inside one centreline. */
function vertexPatches({ wall, from, to }: PlacedStretch): readonly Patch[] {
  const { centreline } = wall
  const length = pathLength(centreline)
  const inner = pointStations(centreline).filter(station => station > from + 1e-6 && station < to - 1e-6)
  const all = centreline.closed && to - from > length - 1e-6 ? [0, ...inner] : inner
  return all.flatMap(station => {
    const back = pathTangent(centreline, (station === 0 ? length : station) - 1e-9)
    const rays = [
      { out: pathTangent(centreline, station + 1e-9), half: wall.thickness / 2 },
      { out: times(back, -1), half: wall.thickness / 2 },
    ]
    return cornerPatches(pathPoint(centreline, station), rays).map(({ ring }) => ({
      key: shellKey(wall),
      ring,
    }))
  })
}

/** From the end of a stem drawn short of the centreline it meets, on to that centreline. */
function landingPatches(plan: SectionPlan, z: Metres): readonly Patch[] {
  return plan.junctions.flatMap(({ point, arms }) =>
    arms
      .filter(arm => standsAt(arm.wall, z) && holdsArm(plan.stretches, arm))
      .map(({ wall, station }) => ({ wall, end: pathPoint(wall.centreline, station) }))
      .filter(({ wall, end }) => distance(end, point) > stripLap && distance(end, point) < 2 * wall.thickness)
      .map(({ wall, end }) => {
        const line = { points: [end, point], bulges: [0], closed: false }
        const [ring] = wallStrips(line, 0, distance(end, point), -wall.thickness / 2, wall.thickness / 2)
        return { key: shellKey(wall), ring: ring! }
      }),
  )
}

/** Corner patches at the junctions; between two kinds of wall, or two sections, the one that takes precedence has it. */
function junctionPatches(plan: SectionPlan, z: Metres): readonly Patch[] {
  return plan.junctions.flatMap(junction => {
    const arms = junction.arms.filter(({ wall }) => standsAt(wall, z))
    const rays = arms.map(({ wall, out }) => ({ out, half: wall.thickness / 2 }))
    return cornerPatches(junction.point, rays).flatMap(({ ring, between }) => {
      const [a, b] = [arms[between[0]]!, arms[between[1]]!]
      const held = [a, b].filter(arm => holdsArm(plan.stretches, arm))
      if (held.length === 0 || (held.length === 1 && !keepsCorner(plan, junction, z))) return []
      return [{ key: held.map(({ wall }) => shellKey(wall)).sort()[0]!, ring }]
    })
  })
}

/** What other sections' walls take away where they go on through a junction that ours end at. */
function foreignRings(plan: SectionPlan, z: Metres): readonly Ring[] {
  return plan.junctions.flatMap(junction =>
    foreignOwners(plan, junction, z).flatMap(({ wall, station }) => {
      const reach = 4 * Math.max(...junction.arms.map(arm => arm.wall.thickness))
      const { low, high } = facesAt(wall, z)
      const length = pathLength(wall.centreline)
      return wallStrips(
        wall.centreline,
        Math.max(0, station - reach),
        Math.min(length, station + reach),
        low,
        high,
      )
    }),
  )
}

/** Walls of other sections that come before all of ours at a junction. */
export function foreignOwners(plan: SectionPlan, junction: Junction, z: Metres): readonly Arm[] {
  const standing = junction.arms.filter(({ wall }) => standsAt(wall, z))
  const ours = standing.filter(arm => holdsArm(plan.stretches, arm))
  const theirs = standing.filter(arm => !holdsArm(plan.stretches, arm))
  const first = Math.min(...ours.map(arm => precedence(plan, junction, arm)))
  return theirs.filter(arm => precedence(plan, junction, arm) < first)
}

const keepsCorner = (plan: SectionPlan, junction: Junction, z: Metres): boolean =>
  foreignOwners(plan, junction, z).length === 0

/** A wall that goes on through the junction comes before one that ends there; then the order of the plan. */
function precedence(plan: SectionPlan, junction: Junction, { wall }: Arm): number {
  const through = junction.arms.filter(arm => arm.wall === wall).length > 1
  return (through ? 0 : 1e6) + (plan.order.get(wall.id) ?? 0)
}
