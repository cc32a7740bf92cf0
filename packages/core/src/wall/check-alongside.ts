import { cross, nearestOnPath, pathLength, pathPoint, pathTangent } from '../geometry/index.js'
import type { Wall } from '../job/index.js'
import type { Units } from '../limit/index.js'
import type { Metres } from '../quantity/index.js'
import type { Problem } from '../result/index.js'
import { problem, sayLength } from './check-words.js'

/** Walls that run inside one another, as when both lines of a wall were read as walls. */
export const checkAlongside = (walls: readonly Wall[], units?: Units): readonly Problem[] =>
  walls.flatMap((wall, i) =>
    walls.slice(0, i).flatMap(other => {
      if (wall.base >= other.top || wall.top <= other.base) return []
      const shared = Math.min(sharedRun(wall, other), sharedRun(other, wall))
      return shared > Math.max(wall.thickness, other.thickness)
        ? [
            problem(
              'wall/alongside',
              `walls[${i}].centreline`,
              `Walls ${other.id} and ${wall.id} run inside each other for ${sayLength(shared, units)}; keep one of them or move them apart.`,
            ),
          ]
        : []
    }),
  )

/** Probes along a wall, closer than any bead is wide. */
const step: Metres = 0.04

/** Length of a wall that lies alongside another, nearer than their thicknesses allow, within about 15° of it. */
function sharedRun({ centreline, thickness }: Wall, other: Wall): Metres {
  const length = pathLength(centreline)
  const count = Math.max(1, Math.round(length / step))
  const probes = Array.from({ length: count }, (_, k) => ((k + 0.5) * length) / count)
  const shared = probes.filter(station => {
    const near = nearestOnPath(other.centreline, pathPoint(centreline, station))
    if (near.distance > 0.45 * (thickness + other.thickness)) return false
    const slant = cross(pathTangent(centreline, station), pathTangent(other.centreline, near.station))
    const inside = near.station > 1e-6 && near.station < pathLength(other.centreline) - 1e-6
    return inside && Math.abs(slant) < 0.26
  })
  return (shared.length * length) / count
}
