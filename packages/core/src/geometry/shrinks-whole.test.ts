import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import {
  difference,
  inflate,
  initGeometry,
  inset,
  type Point,
  type Polygon,
  regionArea,
  shrinksWhole,
  stroke,
  union,
} from './index.js'
import type { Ring } from './ring.js'

beforeAll(() => initGeometry())

const ring = (...points: Point[]): Ring => points
const box = (x: number, y: number, u: number, v: number): Ring => ring([x, y], [u, y], [u, v], [x, v])
const polygon = (outer: Ring, ...holes: Ring[]): Polygon => ({
  outer,
  holes: holes.map(hole => [...hole].reverse()),
})

describe('a polygon', () => {
  const dumbbell = ring(
    [0, 0],
    [1, 0],
    [1, 0.4],
    [2, 0.4],
    [2, 0],
    [3, 0],
    [3, 1],
    [2, 1],
    [2, 0.6],
    [1, 0.6],
    [1, 1],
    [0, 1],
  )
  it.each([
    ['a strip half a millimetre wider than twice the distance', polygon(box(0, 0, 3, 0.2005)), true],
    ['a strip half a millimetre narrower', polygon(box(0, 0, 3, 0.1995)), false],
    ['two rooms and a passage just 0.2 wide between them', polygon(dumbbell), false],
    ['a wall of 0.25 round a room', polygon(box(0, 0, 3, 3), box(0.25, 0.25, 2.75, 2.75)), true],
    ['a room nearer to one face', polygon(box(0, 0, 3, 3), box(0.19, 0.25, 2.75, 2.75)), false],
    [
      'two rooms with a thin wall between',
      polygon(box(0, 0, 5, 3), box(0.5, 0.5, 2.4, 2.5), box(2.55, 0.5, 4.5, 2.5)),
      false,
    ],
    ['a tip sharper than a mitre goes', polygon(ring([0, 0], [4, 0], [0, 1])), false],
    ['the same tip, blunt', polygon(ring([0, 0], [4, 0], [4, 0.4], [0, 1])), true],
  ])('comes back whole when shrunk by 0.1, or does not: %s', (_, shape, whole) => {
    expect(shrinksWhole(shape, 0.1)).toBe(whole)
  })

  // independent: the polygon engine itself does the shrinking and growing.
  it('is said to come back whole only when the engine gives it back', () => {
    let whole = 0
    const at = fc.integer({ min: 0, max: 300 }).map(cm => cm / 100)
    const point = fc.tuple(at, at)
    const line = fc.array(point, { minLength: 2, maxLength: 4 })
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 3 }),
        fc.constantFrom(0.15, 0.25, 0.3),
        fc.constantFrom(0.03, 0.05, 0.1, 0.14),
        (lines, width, by) => {
          for (const shape of union(stroke(lines, width, 'butt', 'mitre'))) {
            if (!shrinksWhole(shape, by)) continue
            whole += 1
            const back = inflate(inset([shape], by, 'mitre'), by, 'mitre')
            // The engine rounds to a nanometre, which turns a short edge; the least place told of is 8.75 cm².
            expect(regionArea(difference([shape], back))).toBeLessThan(1e-5)
            expect(regionArea(difference(back, [shape]))).toBeLessThan(1e-5)
          }
        },
      ),
      { numRuns: 300, seed: 7 },
    )
    expect(whole).toBeGreaterThan(60)
  })

  // independent: the polygon engine, which squares corners off as far from them.
  it.each([
    ['a room in a wall', polygon(box(0, 0, 3, 3), box(0.5, 0.5, 2.5, 2.5))],
    ['an angle', polygon(ring([0, 0], [3, 0], [3, 1], [1.4, 1.2], [1, 3], [0, 3]))],
  ])('shrinks as the engine shrinks it, corners squared off: %s', (_, shape) => {
    const engine = combineShrunk(shape, 0.1)
    const edges = inset([shape], 0.1, 'square')
    expect(regionArea(difference(edges, engine)) + regionArea(difference(engine, edges))).toBeLessThan(1e-7)
    expect(edges.flatMap(each => [each.outer, ...each.holes].flat())).toHaveLength(
      engine.flatMap(each => [each.outer, ...each.holes].flat()).length,
    )
  })
})

/** Shrunk by the engine: all else about it that is within a box, grown. */
function combineShrunk(shape: Polygon, by: number) {
  const around = polygon(box(-9, -9, 9, 9))
  return difference([around], inflate(difference([around], [shape]), by, 'square'))
}
