import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pathBounds } from './bounds.js'
import { fitArcs } from './fit-arcs.js'
import { anyPath, bent, square } from './fixtures/example-paths.js'
import { flattenPath } from './flatten.js'
import type { Path, Point } from './path.js'
import { distance } from './point.js'
import { arcOf, segmentsOf } from './segment.js'
import {
  nearestOnPath,
  pathLength,
  pathNormal,
  pathPoint,
  pathTangent,
  reversePath,
  subPath,
} from './station.js'

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
