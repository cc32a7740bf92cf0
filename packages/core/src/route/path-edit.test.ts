import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Path } from '../geometry/index.js'
import { roundedBox } from './invented-section.js'
import { nearestPlace, openedAt, reversed, withoutTinyPieces } from './path-edit.js'
import { pointAt, segmentOf, segmentsOf } from './segment.js'

const lengthOf = (path: Path) => segmentsOf(path).reduce((sum, segment) => sum + segment.length, 0)
const box = roundedBox(1, 2, 4, 3, 0.25)

describe('segmentOf', () => {
  it('measures a half circle', () => {
    // closed form: bulge 1, chord 2: radius 1, length π, turning left from straight down
    const half = segmentOf([0, 0], [2, 0], 1)
    expect(half.radius).toBeCloseTo(1, 12)
    expect(half.length).toBeCloseTo(Math.PI, 12)
    expect(half.heading).toBeCloseTo(-Math.PI / 2, 12)
    expect(pointAt(half, 0.5)[1]).toBeCloseTo(-1, 12)
  })
})

describe('editing a path', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true })
  it('keeps the length of a loop opened anywhere', () =>
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 7 }), share, (segment, at) => {
        const point = pointAt(segmentsOf(box)[segment]!, at)
        const place = nearestPlace(box, point)
        expect(place.distance).toBeLessThan(1e-3)
        const open = openedAt(box, place)
        expect(lengthOf(open)).toBeCloseTo(lengthOf(box), 9)
        expect(open.points.at(-1)).toEqual(open.points[0])
        expect(open.closed).toBe(false)
      }),
    ))
  it('runs the same pieces back when reversed, and forth when reversed twice', () => {
    for (const path of [box, openedAt(box, { segment: 2, share: 0, point: box.points[2]! })]) {
      expect(reversed(reversed(path))).toEqual(path)
      const back = segmentsOf(reversed(path))
      expect(back.map(each => each.length).sort()).toEqual(
        segmentsOf(path)
          .map(each => each.length)
          .sort(),
      )
      expect(back[0]!.from).toEqual(segmentsOf(path).at(-1)!.to)
      expect(back[0]!.sweep).toBeCloseTo(-segmentsOf(path).at(-1)!.sweep, 12)
    }
  })
  it('drops pieces too short to run', () => {
    const path: Path = {
      points: [
        [0, 0],
        [1, 0],
        [1, 1e-10],
        [1, 1],
      ],
      bulges: [0, 0, 0],
      closed: false,
    }
    expect(withoutTinyPieces(path).points).toEqual([
      [0, 0],
      [1, 1e-10],
      [1, 1],
    ])
  })
  it('finds the nearest place as a search in small steps does', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        (x, y) => {
          // independent: sample every piece at 400 places
          let least = Number.POSITIVE_INFINITY
          for (const segment of segmentsOf(box))
            for (let i = 0; i <= 400; i++) {
              const [px, py] = pointAt(segment, i / 400)
              least = Math.min(least, Math.hypot(px - x, py - y))
            }
          const found = nearestPlace(box, [x, y]).distance
          expect(found).toBeLessThanOrEqual(least + 1e-3)
          expect(found).toBeGreaterThan(least - 0.01)
        },
      ),
    ))
})
