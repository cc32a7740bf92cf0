import type { Point } from '../geometry/index.js'
import { assert } from '../result/index.js'
import { orderExactly } from './order-exact.js'
import { orderNearly } from './order-large.js'
import { distance } from './segment.js'
import type { Way } from './way.js'

/** Beads to bring into order: each is run once, in one of its ways. */
export interface OrderTask {
  readonly ways: readonly (readonly Way[])[]
  /** Widest gap that is joined without a stop, for a pair of beads. */
  readonly gap: (a: number, b: number) => number
  /** Where the nozzle comes from and has to be afterwards, if that matters. */
  readonly from?: Point
  readonly to?: Point
  /** An order of beads to improve on, where many beads forbid the exact answer. */
  readonly like?: readonly number[]
}

/** The task as numbers: ways in one row, what it costs to begin with one, to follow one by another, to end. */
export interface OrderCosts {
  readonly ways: readonly Way[]
  readonly beads: number
  /** First way of each bead, and one past the last. */
  readonly first: Int32Array
  readonly begin: Float64Array
  readonly link: Float64Array
  readonly end: Float64Array
  /** Per pair of beads the least any of their ways cost one after the other; the same both ways round. */
  readonly near: Float64Array
  /** Ways of the bead that has most. */
  readonly widest: number
}

/** One start weighs more than any travel on a site [m]. */
export const startCost = 1e6

/** Up to this many beads the order is proved best over the ways offered; beyond, it is improved until nothing helps. */
export const exactMost = 8

/**
 * Order and way of each bead: fewest starts of the pump, then the least travel.
 *
 * @param task  ways of each bead and the gaps that are joined
 *
 * Source   Held-Karp recursion over subsets and end states up to `exactMost` beads [HeldKarp1962]; insertion and
 *          exchange (2-opt, Or-opt) beyond, with the best ways for each order found exactly.
 * Range    any number of beads; none gives none.
 * Assumes  travel in straight lines; a start costs more than any travel.
 */
export function orderBeads(task: OrderTask): readonly Way[] {
  if (task.ways.length === 0) return []
  const costs = orderCosts(task)
  const order = task.ways.length <= exactMost ? orderExactly(costs) : orderNearly(costs, task.like)
  assert(order.length === task.ways.length, 'every bead is run once')
  return order.map(index => costs.ways[index]!)
}

export function orderCosts({ ways, gap, from, to }: OrderTask): OrderCosts {
  const flat = ways.flat()
  const first = new Int32Array(ways.length + 1)
  ways.forEach((each, bead) => {
    first[bead + 1] = first[bead]! + each.length
  })
  const begin = Float64Array.from(flat, way => way.dislike + (from ? distance(from, way.enter) : 0))
  const end = Float64Array.from(flat, way => (to ? distance(way.leave, to) : 0))
  const widest = ways.reduce((most, each) => Math.max(most, each.length), 0)
  return { ways: flat, beads: ways.length, first, begin, end, widest, ...linksOf(flat, first, gap) }
}

/** Cost of every way after every other, and the least of each pair of beads. */
function linksOf(flat: readonly Way[], first: Int32Array, gap: OrderTask['gap']) {
  const beads = first.length - 1
  const [link, near] = [new Float64Array(flat.length ** 2), new Float64Array(beads ** 2)]
  const enter = Float64Array.from(flat.flatMap(way => way.enter))
  for (let a = 0; a < beads; a++)
    for (let b = 0; b < beads; b++) {
      if (a === b) continue
      const joined = gap(a, b)
      let least = Number.POSITIVE_INFINITY
      for (let i = first[a]!; i < first[a + 1]!; i++) {
        const [x, y] = flat[i]!.leave
        for (let k = first[b]!; k < first[b + 1]!; k++) {
          const away = Math.sqrt((enter[2 * k]! - x) ** 2 + (enter[2 * k + 1]! - y) ** 2)
          const cost = away <= joined ? away : away + startCost
          if (cost < least) least = cost
          link[i * flat.length + k] = cost + flat[k]!.dislike
        }
      }
      const [there, back] = [a * beads + b, b * beads + a]
      near[there] = near[back] = a < b ? least : Math.min(least, near[back]!)
    }
  return { link, near }
}
