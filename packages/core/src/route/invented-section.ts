import type { Path, Point } from '../geometry/index.js'
import type { Bead, SectionBands } from '../wall/index.js'

/** Invented beads and sections for tests, goldens and benchmarks of routing and machine files. */
export const line = (...points: Point[]): Path => ({
  points,
  bulges: points.slice(1).map(() => 0),
  closed: false,
})

/** A rectangle with rounded corners, counter-clockwise. */
export function roundedBox(x: number, y: number, width: number, depth: number, radius: number): Path {
  const quarter = Math.tan(Math.PI / 8)
  const [x1, y1] = [x + width, y + depth]
  const points: Point[] = [
    [x + radius, y],
    [x1 - radius, y],
    [x1, y + radius],
    [x1, y1 - radius],
    [x1 - radius, y1],
    [x + radius, y1],
    [x, y1 - radius],
    [x, y + radius],
  ]
  return { points, bulges: [0, quarter, 0, quarter, 0, quarter, 0, quarter], closed: true }
}

/** A tie running to and fro between two faces. */
export function zigzag(from: Point, length: number, depth: number, pitch: number): Path {
  const count = Math.floor((2 * length) / pitch)
  return line(
    ...Array.from(
      { length: count + 1 },
      (_, i): Point => [from[0] + (i * pitch) / 2, from[1] + (i % 2) * depth],
    ),
  )
}

export const bead = (id: string, path: Path, role: Bead['role'] = 'wythe'): Bead => ({
  id,
  role,
  path,
  width: 0.05,
  height: 0.02,
})

export const sectionOf = (beads: readonly Bead[], layers = 10): SectionBands => ({
  section: 'S',
  layers,
  bands: [{ fromLayer: 1, toLayer: layers, body: [], bodyArea: 0, beads, thinPlaces: [] }],
  volume: 0,
})

/** One hollow wall, 4 × 0.3 m: a wythe all round and a tie in the cavity, touching it at both ends. */
export const hollowWall: readonly Bead[] = [
  bead('w', roundedBox(1, 1, 4, 0.3, 0.06)),
  bead('t', zigzag([1.1, 1.045], 3.6, 0.21, 0.6), 'web'),
]
