import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pathBounds } from './bounds.js'
import { pathCrossings, selfCrossings } from './crossing.js'
import { filletPath } from './fillet.js'
import { fitArcs } from './fit-arcs.js'
import { flattenPath } from './flatten.js'
import { offsetPath } from './offset-path.js'
import type { Path, Point } from './path.js'
import { distance } from './point.js'
import { arcOf, segmentsOf } from './segment.js'
import { indexSegments } from './segment-index.js'
import {
  nearestOnPath,
  pathLength,
  pathNormal,
  pathPoint,
  pathTangent,
  reversePath,
  subPath,
} from './station.js'

const quarter = Math.SQRT2 - 1
/** Two metres east, a quarter circle of 1 m radius turning left, one metre north. */
const bent: Path = {
  points: [
    [0, 0],
    [2, 0],
    [3, 1],
    [3, 2],
  ],
  bulges: [0, quarter, 0],
  closed: false,
}
const square: Path = {
  points: [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ],
  bulges: [0, 0, 0, 0],
  closed: true,
}

/** Open paths of short lines and arcs that never turn back sharply. */
const anyPath: fc.Arbitrary<Path> = fc
  .array(
    fc.record({
      length: fc.integer({ min: 200, max: 3000 }),
      turn: fc.integer({ min: -80, max: 80 }),
      bulge: fc.integer({ min: -60, max: 60 }),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map(legs => {
    const points: Point[] = [[0, 0]]
    let heading = 0
    for (const { length, turn } of legs) {
      heading += (turn * Math.PI) / 180
      const [x, y] = points.at(-1)!
      points.push([x + (length / 1000) * Math.cos(heading), y + (length / 1000) * Math.sin(heading)])
    }
    return { points, bulges: legs.map(({ bulge }) => bulge / 100), closed: false }
  })

describe('a path of lines and arcs', () => {
  // closed form: 2 + π/2 + 1
  it('is as long as its lines and arcs', () => expect(pathLength(bent)).toBeCloseTo(3 + Math.PI / 2, 12))
  it('has a point, a tangent and a normal at every station', () => {
    const station = 2 + Math.PI / 4
    expect(pathPoint(bent, station)[0]).toBeCloseTo(2 + Math.SQRT1_2, 12)
    expect(pathPoint(bent, station)[1]).toBeCloseTo(1 - Math.SQRT1_2, 12)
    expect(pathTangent(bent, station)[0]).toBeCloseTo(Math.SQRT1_2, 12)
    expect(pathNormal(bent, station)[0]).toBeCloseTo(-Math.SQRT1_2, 12)
  })
  it('keeps its arcs in its parts', () => {
    const part = subPath(bent, 1, 2 + Math.PI / 4)
    expect(part.points).toHaveLength(3)
    expect(4 * Math.atan(part.bulges[1]!)).toBeCloseTo(Math.PI / 4, 12)
  })
  it('reaches past the axis directions of its arcs', () => {
    const half: Path = {
      points: [
        [0, 0],
        [2, 0],
      ],
      bulges: [1],
      closed: false,
    }
    expect(pathBounds(half).least[1]).toBeCloseTo(-1, 12)
  })
  it('finds the nearest station', () => {
    const near = nearestOnPath(bent, [2 + 2 * Math.SQRT1_2, 1 - 2 * Math.SQRT1_2])
    expect(near.station).toBeCloseTo(2 + Math.PI / 4, 9)
    expect(near.distance).toBeCloseTo(1, 9)
  })
  it('is cut into parts that add up to its length', () => {
    fc.assert(
      fc.property(anyPath, fc.integer({ min: 1, max: 99 }), (path, percent) => {
        const [length, cut] = [pathLength(path), (pathLength(path) * percent) / 100]
        const parts = pathLength(subPath(path, 0, cut)) + pathLength(subPath(path, cut, length))
        expect(Math.abs(parts - length)).toBeLessThan(1e-9)
      }),
    )
  })
  it('runs through the same points backwards', () => {
    fc.assert(
      fc.property(anyPath, fc.integer({ min: 0, max: 100 }), (path, percent) => {
        const [length, station] = [pathLength(path), (pathLength(path) * percent) / 100]
        expect(
          distance(pathPoint(path, station), pathPoint(reversePath(path), length - station)),
        ).toBeLessThan(1e-9)
      }),
    )
  })
})

describe('flattenPath', () => {
  it('leaves arcs by no more than its tolerance, measured at the middle of each chord', () => {
    fc.assert(
      fc.property(anyPath, fc.constantFrom(1e-3, 1e-4, 1e-5), (path, tolerance) => {
        const points = flattenPath(path, tolerance)
        for (let i = 0; i + 1 < points.length; i++) {
          const [a, b] = [points[i]!, points[i + 1]!]
          const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
          expect(nearestOnPath(path, middle).distance).toBeLessThan(tolerance * 1.0001 + 1e-12)
        }
      }),
    )
  })
})

describe('fitArcs', () => {
  it('finds again the arcs that flattening took away', () => {
    const back = fitArcs(flattenPath(bent), false)
    expect(back.points).toHaveLength(4)
    expect(arcOf(segmentsOf(back)[1]!).radius).toBeCloseTo(1, 6)
  })
  it('moves no point by more than its tolerance', () => {
    fc.assert(
      fc.property(anyPath, path => {
        const line = flattenPath(path)
        const fitted = fitArcs(line, false)
        for (const point of line) expect(nearestOnPath(fitted, point).distance).toBeLessThan(2.1e-5)
      }),
      { numRuns: 60 },
    )
  })
  it('leaves a square a square', () =>
    expect(fitArcs(square.points, true).bulges.every(bulge => bulge === 0)).toBe(true))
  it('leaves a twelve-sided column twelve-sided', () => {
    const ring = Array.from(
      { length: 12 },
      (_, k): Point => [0.3 * Math.cos((k * Math.PI) / 6), 0.3 * Math.sin((k * Math.PI) / 6)],
    )
    expect(fitArcs(ring, true).points).toHaveLength(12)
  })
})

describe('offsetPath', () => {
  // closed form: the arc's radius shrinks from 1 m to 0.8 m.
  it('keeps arcs concentric', () => {
    const inside = offsetPath(bent, 0.2)
    expect(pathLength(inside)).toBeCloseTo(3 + 0.8 * (Math.PI / 2), 9)
  })
  it('does not fold over itself inside the corner of a line and an arc', () => {
    const kinked: Path = {
      points: [
        [0, 0],
        [2, 0],
        [4, 0.5],
      ],
      bulges: [0, 0.2],
      closed: false,
    }
    for (const by of [0.15, -0.15]) expect(selfCrossings(offsetPath(kinked, by))).toEqual([])
    const folded = offsetPath(kinked, -0.15)
    for (const point of folded.points)
      expect(nearestOnPath(kinked, point).distance).toBeGreaterThan(0.15 - 1e-9)
  })
  it('grows a square by a mitred margin', () =>
    expect(pathLength(offsetPath(square, -0.1))).toBeCloseTo(4.8, 9))
})

describe('filletPath', () => {
  // closed form: each corner trades 2r of line for πr/2 of arc.
  it('shortens each right corner by (2 − π/2)·r', () => {
    const rounded = filletPath(square, () => 0.1)
    expect(pathLength(rounded)).toBeCloseTo(4 - 4 * 0.1 * (2 - Math.PI / 2), 9)
  })
  it('keeps tangents continuous between lines and arcs', () => {
    fc.assert(
      fc.property(anyPath, path => {
        const rounded = filletPath(path, () => 0.01)
        const parts = segmentsOf(rounded)
        for (const [i, part] of parts.entries()) {
          const next = parts[i + 1]
          const isFillet = Math.abs((part.bulge && arcOf(part).radius) - 0.01) < 1e-9
          if (!next || !isFillet) continue
          const station = parts
            .slice(0, i + 1)
            .reduce(
              (sum, s) => sum + pathLength({ points: [s.start, s.end], bulges: [s.bulge], closed: false }),
              0,
            )
          const [a, b] = [pathTangent(rounded, station - 1e-9), pathTangent(rounded, station + 1e-9)]
          expect(distance(a, b)).toBeLessThan(1e-5)
        }
      }),
      { numRuns: 60 },
    )
  })
})

describe('filletPath past a short link', () => {
  // closed form: from x = 0 along the floor, r·tan(turn/2) before the corner the arc begins; the stub of 5 cm is swallowed.
  it('keeps its radius where a stub runs on smoothly', () => {
    const stub: Path = {
      points: [
        [0, 0],
        [1, 0],
        [1.05, 0],
        [1.05, 1],
      ],
      bulges: [0, 0, 0],
      closed: false,
    }
    const rounded = filletPath(stub, () => 0.2)
    expect(rounded.points).toHaveLength(4)
    expect(rounded.points[1]![0]).toBeCloseTo(0.85, 9)
    expect(arcOf(segmentsOf(rounded)[1]!).radius).toBeCloseTo(0.2, 9)
  })
  it('shrinks it where two corners share a short side', () => {
    const step: Path = {
      points: [
        [0, 0],
        [1, 0],
        [1, 0.1],
        [2, 0.1],
      ],
      bulges: [0, 0, 0],
      closed: false,
    }
    const radii = segmentsOf(filletPath(step, () => 0.2))
      .filter(part => part.bulge !== 0)
      .map(part => arcOf(part).radius)
    expect(radii).toHaveLength(2)
    for (const radius of radii) expect(radius).toBeLessThanOrEqual(0.05)
  })
})

describe('indexSegments', () => {
  it('finds the same clearance as looking at every edge', () => {
    fc.assert(
      fc.property(
        anyPath,
        fc.integer({ min: -2000, max: 5000 }),
        fc.integer({ min: -2000, max: 2000 }),
        (path, x, y) => {
          const line = flattenPath(path, 1e-3)
          const edges = line.slice(1).map((end, i) => ({ start: line[i]!, end, bulge: 0 }))
          const target: Point = [x / 1000, y / 1000]
          const nearest = nearestOnPath(
            { points: line, bulges: edges.map(() => 0), closed: false },
            target,
          ).distance
          const found = indexSegments(edges).clearance(target, 1)
          if (nearest > 1) expect(found).toBeUndefined()
          else expect(found).toBeCloseTo(nearest, 12)
        },
      ),
      { numRuns: 60 },
    )
  })
})

describe('crossings', () => {
  it('are found once where a figure of eight crosses itself', () => {
    const eight: Path = {
      points: [
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2],
      ],
      bulges: [0, 0, 0],
      closed: false,
    }
    expect(selfCrossings(eight)).toEqual([[1, 1]])
  })
  it('are none on a path that only goes on', () => expect(selfCrossings(bent)).toEqual([]))
  it('of a line and an arc lie on both', () => {
    const line: Path = {
      points: [
        [2, 1],
        [4, -1],
      ],
      bulges: [0],
      closed: false,
    }
    const [crossing] = pathCrossings(line, bent)
    expect(distance(crossing!.point, [2, 1])).toBeCloseTo(1, 9)
  })
})
