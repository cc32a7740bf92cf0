import { Clipper, EndType, FillRule, JoinType } from 'clipper2-ts'
import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { initGeometry } from './engine.js'
import type { Point } from './path.js'
import {
  clipOpenLines,
  difference,
  inflate,
  inset,
  intersection,
  stroke,
  union,
  unionRings,
} from './region.js'
import { polygonCentroid, type Ring, regionArea, regionContains, ringArea, tidyRing } from './ring.js'

beforeAll(() => initGeometry())

const box = (x: number, y: number, w: number, h: number): Ring => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]

/** Walls as turned boxes on a millimetre grid, as plans have them. */
const plan: fc.Arbitrary<readonly Ring[]> = fc.array(
  fc
    .record({
      x: fc.integer({ min: 0, max: 9000 }),
      y: fc.integer({ min: 0, max: 9000 }),
      length: fc.integer({ min: 500, max: 6000 }),
      thickness: fc.integer({ min: 50, max: 400 }),
      angle: fc.constantFrom(0, 30, 45, 90, 120),
    })
    .map(({ x, y, length, thickness, angle }): Ring => {
      const [c, s] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
      return box(0, -thickness / 2000, length / 1000, thickness / 1000).map(
        ([u, v]): Point => [x / 1000 + u * c - v * s, y / 1000 + u * s + v * c],
      )
    }),
  { minLength: 1, maxLength: 12 },
)

const scale = 1e7
const independent = (rings: readonly Ring[]) =>
  rings.map(ring => ring.map(([x, y]) => ({ x: Math.round(x * scale), y: Math.round(y * scale) })))

describe('polygons', () => {
  // hand: two unit squares that share a quarter.
  it('unite, intersect and subtract by area', () => {
    const [a, b] = [unionRings([box(0, 0, 1, 1)]), unionRings([box(0.5, 0.5, 1, 1)])]
    expect(regionArea(union(a, b))).toBeCloseTo(1.75, 9)
    expect(regionArea(intersection(a, b))).toBeCloseTo(0.25, 9)
    expect(regionArea(difference(a, b))).toBeCloseTo(0.75, 9)
  })
  it('have counter-clockwise outer rings and clockwise holes', () => {
    const [frame] = difference(unionRings([box(0, 0, 3, 3)]), unionRings([box(1, 1, 1, 1)]))
    expect(ringArea(frame!.outer)).toBeCloseTo(9, 9)
    expect(ringArea(frame!.holes[0]!)).toBeCloseTo(-1, 9)
    expect(regionContains([frame!], [1.5, 1.5])).toBe(false)
    expect(polygonCentroid(frame!)[0]).toBeCloseTo(1.5, 9)
  })
  it('shrink away where they are thinner than twice the inset', () => {
    expect(inset(unionRings([box(0, 0, 1, 0.1)]), 0.051, 'mitre')).toEqual([])
  })
  // closed form: a square grown by r has area a² + 4ar + πr² with round corners, (a + 2r)² mitred.
  it('grow by closed-form areas', () => {
    const square = unionRings([box(0, 0, 1, 1)])
    expect(regionArea(inflate(square, 0.1, 'mitre'))).toBeCloseTo(1.44, 9)
    // The round corners are chords within 0.05 mm of the arc, so up to 2/3·0.05 mm·2πr = 2.1e-5 m² short.
    expect(Math.abs(regionArea(inflate(square, 0.1, 'round')) - (1.4 + Math.PI * 0.01))).toBeLessThan(2.2e-5)
  })
  it('are what a pen covers along a line', () => {
    expect(
      regionArea(
        stroke(
          [
            [
              [0, 0],
              [2, 0],
            ],
          ],
          0.1,
          'butt',
        ),
      ),
    ).toBeCloseTo(0.2, 9)
    expect(
      regionArea(
        stroke(
          [
            [
              [0, 0],
              [2, 0],
            ],
          ],
          0.1,
          'square',
        ),
      ),
    ).toBeCloseTo(0.21, 9)
  })
  it('cut open lines, which keep their direction', () => {
    const [inside] = clipOpenLines(
      [
        [
          [-1, 0.5],
          [3, 0.5],
        ],
      ],
      unionRings([box(0, 0, 1, 1)]),
      'inside',
    )
    expect(inside).toEqual([
      [0, 0.5],
      [1, 0.5],
    ])
    expect(
      clipOpenLines(
        [
          [
            [-1, 0.5],
            [3, 0.5],
          ],
        ],
        unionRings([box(0, 0, 1, 1)]),
        'outside',
      ),
    ).toHaveLength(2)
  })
})

describe('tidyRing', () => {
  it('drops doubled and flat points, wherever the ring starts, and keeps the corners', () => {
    const ring: Ring = [
      [1, 0],
      [1, 1e-9],
      [1, 0.5],
      [1, 1],
      [0, 1],
      [1e-9, 1e-9],
      [0, 0],
      [0.5, 1e-9],
    ]
    for (let k = 0; k < ring.length; k++) {
      const tidy = tidyRing([...ring.slice(k), ...ring.slice(0, k)], 3e-8)
      expect(tidy).toHaveLength(4)
      expect(ringArea(tidy)).toBeCloseTo(1, 8)
    }
  })
})

describe('against clipper2-ts 2.0.1, another port of the same algorithm', () => {
  // Its grid here is 1e-7 m: a perimeter of 100 m moves by up to half a unit, 5e-6 m².
  it('plans unite to the same area', () => {
    fc.assert(
      fc.property(plan, rings => {
        const theirs =
          Clipper.union(independent(rings), FillRule.NonZero).reduce(
            (sum, ring) => sum + Clipper.area(ring),
            0,
          ) /
          scale ** 2
        expect(Math.abs(regionArea(unionRings(rings)) - theirs)).toBeLessThan(5e-6)
      }),
      { numRuns: 200 },
    )
  })
  it('plans shrink to the same area', () => {
    fc.assert(
      fc.property(plan, fc.constantFrom(0.01, 0.025, 0.04), (rings, by) => {
        const joined = Clipper.union(independent(rings), FillRule.NonZero)
        const theirs =
          Clipper.inflatePaths(joined, -by * scale, JoinType.Miter, EndType.Polygon, 4).reduce(
            (sum, ring) => sum + Clipper.area(ring),
            0,
          ) /
          scale ** 2
        expect(Math.abs(regionArea(inset(unionRings(rings), by, 'mitre')) - theirs)).toBeLessThan(2e-5)
      }),
      { numRuns: 150 },
    )
  })
})
