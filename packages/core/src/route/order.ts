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
  readonly first: readonly number[]
  readonly begin: readonly number[]
  readonly link: Float64Array
  readonly end: readonly number[]
  /** Per pair of beads the least any of their ways cost one after the other; the same both ways round. */
  readonly near: Float64Array
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
  const size = flat.length
  const link = new Float64Array(size * size)
  flat.forEach((a, i) => {
    flat.forEach((b, k) => {
      if (a.bead !== b.bead) link[i * size + k] = linkCost(a, b, gap(a.bead, b.bead))
    })
  })
  const first = [0]
  for (const each of ways) first.push(first.at(-1)! + each.length)
  const begin = flat.map(way => way.dislike + (from ? distance(from, way.enter) : 0))
  const end = flat.map(way => (to ? distance(way.leave, to) : 0))
  const near = nearness(flat, ways.length, link)
  return {
    ways: flat,
    beads: ways.length,
    first,
    begin,
    link,
    end,
    near,
  }
}

function nearness(ways: readonly Way[], beads: number, link: Float64Array): Float64Array {
  const near = new Float64Array(beads * beads).fill(Number.POSITIVE_INFINITY)
  ways.forEach((a, i) => {
    ways.forEach((b, k) => {
      const cost = link[i * ways.length + k]! - b.dislike
      for (const pair of [a.bead * beads + b.bead, b.bead * beads + a.bead])
        near[pair] = Math.min(near[pair]!, cost)
    })
  })
  return near
}

function linkCost(a: Way, b: Way, gap: number): number {
  const away = distance(a.leave, b.enter)
  return b.dislike + away + (away <= gap ? 0 : startCost)
}
