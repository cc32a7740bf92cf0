import {
  distance,
  pathLength,
  pathPoint,
  pathTangent,
  pointStations,
  type Ring,
  times,
} from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'
import { cornerBlock, cornerPatches } from './corner-patch.js'
import type { Arm, Junction } from './junction.js'
import { standsAt } from './parts.js'
import { foreignOwners, keepsCorner, shellKey } from './precedence.js'
import { facesAt } from './relief.js'
import { holdsArm, type PlacedStretch, type SectionPlan } from './section-plan.js'
import { stripLap, wallStrips } from './strip.js'

/** Material that joins walls, for the shell it belongs to. */
export interface Patch {
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

/** Where two walls end at a corner that is not joined, between sections or make-ups: the block one of them keeps. */
function sharedCorner(plan: SectionPlan, { point, arms }: Junction, z: Metres): Patch | undefined {
  const [a, b, ...more] = arms.filter(({ wall }) => standsAt(wall, z))
  if (!a || !b || more.length > 0 || a.wall === b.wall) return undefined
  const keys = [a, b].filter(arm => holdsArm(plan.stretches, arm)).map(({ wall }) => shellKey(wall))
  if (keys.length === 0 || (keys.length === 2 && keys[0] === keys[1])) return undefined
  const ray = ({ wall, out }: Arm) => ({ out, half: wall.thickness / 2 })
  const ring = cornerBlock(point, ray(a), ray(b))
  return ring && { key: keys.sort()[0]!, ring }
}

/** The wall that keeps a shared corner goes on to its outer face; the other starts beside it. */
function sharedCornerPatches(plan: SectionPlan, z: Metres): readonly Patch[] {
  return plan.junctions.flatMap(junction =>
    keepsCorner(plan, junction, z) ? (sharedCorner(plan, junction, z) ?? []) : [],
  )
}

/** What other sections' walls take away where they go on through a junction that ours end at. */
export function foreignRings(plan: SectionPlan, z: Metres): readonly Ring[] {
  const corners = plan.junctions.flatMap(junction => {
    const corner = keepsCorner(plan, junction, z) ? undefined : sharedCorner(plan, junction, z)
    return corner ? [corner.ring] : []
  })
  const walls = plan.junctions.flatMap(junction =>
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
  return [...corners, ...walls]
}

/** Everything that joins the standing walls of a section. */
export const shellPatches = (
  plan: SectionPlan,
  standing: readonly PlacedStretch[],
  z: Metres,
): readonly Patch[] => [
  ...junctionPatches(plan, z),
  ...landingPatches(plan, z),
  ...sharedCornerPatches(plan, z),
  ...standing.flatMap(vertexPatches),
]
