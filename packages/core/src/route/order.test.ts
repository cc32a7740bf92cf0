import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point } from '../geometry/index.js'
import { exactMost, orderBeads, orderCosts, startCost } from './order.js'
import { orderNearly } from './order-large.js'
import type { Way } from './way.js'

const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

/** All orders and all ways, one by one: shares no code with the routing. */
function bruteForce(ways: readonly (readonly Way[])[], gap: number): { starts: number; travel: number } {
  let best = { starts: Number.POSITIVE_INFINITY, travel: Number.POSITIVE_INFINITY }
  const visit = (left: readonly number[], at: Way | undefined, starts: number, travel: number): void => {
    if (left.length === 0) {
      if (starts < best.starts || (starts === best.starts && travel < best.travel - 1e-9))
        best = { starts, travel }
      return
    }
    for (const bead of left)
      for (const way of ways[bead]!) {
        const away = at ? distance(at.leave, way.enter) : 0
        const stops = !at || away > gap ? 1 : 0
        visit(
          left.filter(each => each !== bead),
          way,
          starts + stops,
          travel + away,
        )
      }
  }
  visit([...ways.keys()], undefined, 0, 0)
  return best
}

function measure(order: readonly Way[], gap: number) {
  let [starts, travel] = [1, 0]
  for (let i = 1; i < order.length; i++) {
    const away = distance(order[i - 1]!.leave, order[i]!.enter)
    travel += away
    if (away > gap) starts++
  }
  return { starts, travel }
}

// points on a coarse grid, so that many ends touch
const gridPoint = fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 }))
const openWays = (bead: number) =>
  fc.tuple(gridPoint, gridPoint).map(([a, b]): Way[] => [
    { bead, enter: a, leave: b, backwards: false, dislike: 0 },
    { bead, enter: b, leave: a, backwards: true, dislike: 0 },
  ])
const loopWays = (bead: number) =>
  fc
    .uniqueArray(gridPoint, { minLength: 2, maxLength: 3, selector: String })
    .map(points =>
      points.map((point): Way => ({ bead, enter: point, leave: point, backwards: false, dislike: 0 })),
    )
const anyBeads = (most: number) =>
  fc
    .integer({ min: 1, max: most })
    .chain(count =>
      fc.tuple(...Array.from({ length: count }, (_, bead) => fc.oneof(openWays(bead), loopWays(bead)))),
    )

describe('orderBeads', () => {
  it('has as few starts and as little travel as the best of all orders', () =>
    fc.assert(
      fc.property(anyBeads(5), ways => {
        const found = measure(orderBeads({ ways, gap: () => 0.1 }), 0.1)
        const best = bruteForce(ways, 0.1)
        expect(found.starts).toBe(best.starts)
        expect(found.travel).toBeCloseTo(best.travel, 6)
      }),
      { numRuns: 120 },
    ))

  it('runs every bead once, beyond the exact size too', () =>
    fc.assert(
      fc.property(anyBeads(14), ways => {
        const order = orderBeads({ ways, gap: () => 0.1 })
        expect(order.map(way => way.bead).sort((a, b) => a - b)).toEqual([...ways.keys()])
      }),
      { numRuns: 40 },
    ))

  it('stays close to the exact order when improved step by step', () => {
    // measured over the same random sets: the improved order may miss the best by one start in few of them
    let [sets, missed] = [0, 0]
    fc.assert(
      fc.property(anyBeads(exactMost), ways => {
        const costs = orderCosts({ ways, gap: () => 0.1 })
        const exact = measure(orderBeads({ ways, gap: () => 0.1 }), 0.1)
        const near = measure(
          orderNearly(costs).map(index => costs.ways[index]!),
          0.1,
        )
        expect(near.starts).toBeLessThanOrEqual(exact.starts + 1)
        sets++
        if (near.starts > exact.starts) missed++
      }),
      { numRuns: 150, seed: 7 },
    )
    expect(missed / sets).toBeLessThan(0.05)
  })

  it('begins and ends where it is told when that costs no start', () => {
    const ways: Way[][] = [0, 1, 2].map(bead => {
      const [a, b]: [Point, Point] = [
        [bead, 0],
        [bead + 1, 0],
      ]
      return [
        { bead, enter: a, leave: b, backwards: false, dislike: 0 },
        { bead, enter: b, leave: a, backwards: true, dislike: 0 },
      ]
    })
    const order = orderBeads({ ways, gap: () => 0.01, from: [3, 0], to: [0, 0] })
    expect(order.map(way => way.bead)).toEqual([2, 1, 0])
    expect(order.every(way => way.backwards)).toBe(true)
  })

  it('weighs a start above any travel on a site', () => expect(startCost).toBeGreaterThan(1e5))
  it('gives nothing for nothing', () => expect(orderBeads({ ways: [], gap: () => 0 })).toEqual([]))
})
