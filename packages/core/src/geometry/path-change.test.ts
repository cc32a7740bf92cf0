import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pathCrossings, selfCrossings } from './crossing.js'
import { filletPath } from './fillet.js'
import { anyPath, bent, square } from './fixtures/example-paths.js'
import { flattenPath } from './flatten.js'
import { offsetPath } from './offset-path.js'
import type { Path, Point } from './path.js'
import { distance } from './point.js'
import { arcOf, segmentsOf } from './segment.js'
import { indexSegments } from './segment-index.js'
import { nearestOnPath, pathLength, pathTangent } from './station.js'

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
