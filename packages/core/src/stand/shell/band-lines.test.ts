import { beforeAll, describe, expect, it } from 'vitest'
import { initGeometry, pathLength, regionArea } from '../../geometry/index.js'
import type { Opening, Wall } from '../../job/index.js'
import type { Section } from '../../section/index.js'
import { type Band, layBeads } from '../../wall/index.js'
import { bandLines } from './band-lines.js'
import { lineMesh } from './line-mesh.js'
import { edgeLength } from './plan-mesh.js'

const print = { beadWidth: 0.05, layerHeight: 0.02, cornerRadius: 0, overhang: 0.15, speed: 0.15 }
const wall = (
  id: string,
  points: readonly (readonly [number, number])[],
  makeUp: Wall['makeUp'],
  thickness: number,
): Wall => ({
  id,
  name: id,
  centreline: { points, bulges: points.slice(1).map(() => 0), closed: false },
  makeUp,
  thickness,
  base: 0,
  top: 2.4,
  joints: [],
})
const zigzag = { kind: 'double', web: 'zigzag', webPitch: 0.6 } as const
const solidWall = wall(
  'A',
  [
    [0, 0],
    [3, 0],
  ],
  { kind: 'solid' },
  0.2,
)
/** Parts of a section and the middle lines of each of its bands. */
function linesOf(walls: readonly Wall[], openings: readonly Opening[] = []) {
  const stretches = walls.map(({ id, centreline }) => ({ wall: id, from: 0, to: pathLength(centreline) }))
  const section: Section = { id: 'S', stretches, joints: [] }
  const { bands } = layBeads({ walls, openings, embeds: [], columns: [], print }, section)
  return bands.map(band => ({ band, lines: bandLines(section, walls, band) }))
}
const areaOf = (lines: ReturnType<typeof bandLines>) =>
  lines.reduce((sum, { path, thickness }) => sum + pathLength(path) * thickness, 0)
/** Beads as wide as they are halfway up. */
const beadArea = (beads: Band['beads']) =>
  beads.reduce((sum, { path, width }) => sum + pathLength(path) * width, 0)
const meshArea = (lines: ReturnType<typeof bandLines>) => {
  const mesh = lineMesh(lines, 0.15)
  return mesh.edges.reduce((sum, edge) => sum + edgeLength(mesh, edge) * edge.thickness, 0)
}

describe('a band as middle lines', () => {
  beforeAll(() => initGeometry())

  it('has a solid wall once, with the area of its body', () => {
    const [{ band, lines }] = linesOf([solidWall]) as [ReturnType<typeof linesOf>[number]]
    expect(lines).toHaveLength(1)
    // hand: 3 m of 0.2 m
    expect(areaOf(lines)).toBeCloseTo(0.6, 6)
    expect(regionArea(band.body)).toBeCloseTo(0.6, 6)
  })

  it('keeps the beads of a double wall beside a solid one', () => {
    const double = wall(
      'B',
      [
        [0, 5],
        [3, 5],
      ],
      zigzag,
      0.25,
    )
    const alone = linesOf([double])[0]!
    const { lines } = linesOf([solidWall, double])[0]!
    expect(areaOf(alone.lines)).toBeCloseTo(beadArea(alone.band.beads), 9)
    expect(areaOf(lines)).toBeCloseTo(0.6 + beadArea(alone.band.beads), 6)
  })

  it.each([
    // the double wall has the corner, half of its thickness from the solid one's length
    ['corner', 3, 3 - 0.125],
    ['stem', 1.5, 3],
  ])('keeps both where they meet, tied to each other: %s', (_, x, length) => {
    const double = wall(
      'B',
      [
        [x, 0],
        [x, 2],
      ],
      zigzag,
      0.25,
    )
    const { band, lines } = linesOf([solidWall, double])[0]!
    const ofDouble = band.beads.filter(
      ({ role, path }) => role === 'web' || path.points.some(([, y]) => y > 1),
    )
    expect(lines.filter(({ thickness }) => thickness === 0.05)).toHaveLength(ofDouble.length)
    const solids = lines.filter(({ thickness }) => thickness === 0.2)
    expect(solids.map(({ path }) => pathLength(path))).toEqual([expect.closeTo(length, 3)])
    // lines set onto each other reach to middle lines: half a bead longer at every end of a tie
    expect(Math.abs(meshArea(lines) / areaOf(lines) - 1)).toBeLessThan(0.06)
    expect(componentsOf(lines)).toBe(1)
  })

  it('breaks a solid wall off at an opening, in the bands that have it', () => {
    const door = { id: 'D', wall: 'A', kind: 'door', at: 1.2, width: 0.9, sill: 0, head: 2.1 } as const
    const bands = linesOf([solidWall], [door])
    expect(bands).toHaveLength(2)
    const [low, high] = bands.map(({ lines }) => areaOf(lines))
    // hand: (3 − 0.9)·0.2 beside the door, 3·0.2 over it
    expect(low).toBeCloseTo(0.42, 3)
    expect(high).toBeCloseTo(0.6, 3)
    expect(low! / regionArea(bands[0]!.band.body)).toBeCloseTo(1, 3)
    expect(bands[0]!.lines.map(({ path }) => path.points[0]![0]).sort()).toEqual([0, expect.closeTo(1.65, 6)])
  })

  it('goes right round in a ring, and stops at its opening', () => {
    const ring = {
      ...solidWall,
      centreline: {
        points: [
          [1, 0],
          [-1, 0],
        ] as const,
        bulges: [1, 1],
        closed: true,
      },
    }
    const whole = linesOf([ring])[0]!
    expect(areaOf(whole.lines)).toBeCloseTo(2 * Math.PI * 0.2, 6)
    const window = { id: 'W', wall: 'A', kind: 'window', at: 1.5, width: 0.6, sill: 0.8, head: 1.6 } as const
    const [under, beside] = linesOf([ring], [window])
    expect(areaOf(under!.lines)).toBeCloseTo(2 * Math.PI * 0.2, 6)
    expect(areaOf(beside!.lines)).toBeCloseTo((2 * Math.PI - 0.6) * 0.2, 2)
  })
})

/** How many pieces a mesh falls into. */
function componentsOf(lines: ReturnType<typeof bandLines>): number {
  const { positions, edges } = lineMesh(lines, 0.15)
  const parts = positions.map((_, i) => i)
  const root = (i: number): number => (parts[i] === i ? i : root(parts[i]!))
  for (const { from, to } of edges) parts[root(from)] = root(to)
  return new Set(edges.map(({ from }) => root(from))).size
}
