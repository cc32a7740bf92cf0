import { flattenPath, type Path } from '@dawnlift/core/geometry'

/** Triangles of swept beads, in metres, z up, the bead's top at z = 0. */
export interface Swept {
  readonly positions: Float32Array
  readonly normals: Float32Array
  readonly indices: Uint32Array
}

/** Sides of the drawn cross-section: flat top, a rounded side as two facets each. The underside is never seen. */
const profile = (width: number, height: number) => {
  const flat = width / 2 - height / 2
  return [
    { across: -flat, up: -height, nx: -0.5, nz: -0.7 },
    { across: -width / 2, up: -height / 2, nx: -1, nz: 0 },
    { across: -flat, up: 0, nx: -0.35, nz: 0.9 },
    { across: flat, up: 0, nx: 0.35, nz: 0.9 },
    { across: width / 2, up: -height / 2, nx: 1, nz: 0 },
    { across: flat, up: -height, nx: 0.5, nz: -0.7 },
  ]
}

/** Chord tolerance of a drawn bead: a tenth of its width cannot be seen [m]. */
const drawnWithin = 0.004

export function sweptBeads(
  beads: readonly { readonly path: Path; readonly width: number; readonly height: number }[],
): Swept {
  const lines = beads.map(bead => ({ ...bead, points: ring(bead.path) }))
  const rows = lines.reduce((sum, { points }) => sum + points.length, 0)
  const sides = 6
  const positions = new Float32Array(rows * sides * 3)
  const normals = new Float32Array(rows * sides * 3)
  const indices = new Uint32Array((rows - lines.length) * (sides - 1) * 6)
  let [row, index] = [0, 0]
  for (const { points, width, height } of lines) {
    const shape = profile(width, height)
    points.forEach((point, i) => {
      const before = points[Math.max(0, i - 1)]!
      const after = points[Math.min(points.length - 1, i + 1)]!
      const [ax, ay] = unitNormal(before, after)
      shape.forEach(({ across, up, nx, nz }, side) => {
        const at = ((row + i) * sides + side) * 3
        positions.set([point[0] + ax * across, point[1] + ay * across, up], at)
        normals.set([ax * nx, ay * nx, nz], at)
      })
      if (i === points.length - 1) return
      for (let side = 0; side < sides - 1; side++) {
        const a = (row + i) * sides + side
        const b = a + sides
        indices.set([a, b, a + 1, a + 1, b, b + 1], index)
        index += 6
      }
    })
    row += points.length
  }
  return { positions, normals, indices }
}

/** Right of the way of travel: across > 0 lies to the right. */
function unitNormal(
  before: readonly [number, number],
  after: readonly [number, number],
): readonly [number, number] {
  const [dx, dy] = [after[0] - before[0], after[1] - before[1]]
  const length = Math.hypot(dx, dy) || 1
  return [dy / length, -dx / length]
}

function ring(path: Path): readonly (readonly [number, number])[] {
  const points = flattenPath(path, drawnWithin)
  return path.closed && points.length > 0 ? [...points, points[0]!] : points
}
