import { lineMesh } from './line-mesh.js'
import type { PlanMesh } from './plan-mesh.js'
import type { Shell } from './shell-model.js'

/** Two wythes 0.2 m apart and closed at both ends, a zigzag of pitch 0.6 m between them: a wall as most are printed. */
function doublePlan(length: number, uneven: number): PlanMesh {
  const line = (points: readonly (readonly [number, number])[]) => ({
    path: { points, bulges: points.slice(1).map(() => 0), closed: false },
    thickness: 0.05,
  })
  const legs = Math.round(length / 0.3)
  const across = (x: number) =>
    line([
      [x, -0.1],
      [x, 0.1],
    ])
  const wythe = (y: number) =>
    line([
      [0, y],
      [length, y],
    ])
  const shifted = (i: number) => (i % legs === 0 ? 0 : uneven * Math.sin(12.9898 * i))
  const zigzag = line(
    Array.from(
      { length: legs + 1 },
      (_, i) => [(length * i) / legs + shifted(i), i % 2 ? 0.06 : -0.06] as const,
    ),
  )
  return lineMesh([wythe(-0.1), wythe(0.1), across(0), across(length), zigzag], 0.15)
}

/**
 * A double wall 1 m high in rows of one stiffness each, 0.2 MPa at its top and 2 MPa at its foot. `uneven`: ties up to so far
 * from their pitch, so that no two stretches are alike.
 */
export const doubleSection = (length: number, rows = 6, uneven = 0): Shell => ({
  mesh: doublePlan(length, uneven),
  height: 1,
  rows,
  modulusAt: at => 2e6 - (1.8e6 * (Math.floor(at * rows) + 0.5)) / rows,
  poisson: 0.3,
  density: 2150,
  gravity: 9.81,
})
