import type { OrderCosts } from './order.js'

/**
 * An order of beads with the cost of every way: `soFar` to have run up to a bead in a way, `toGo` from there to the
 * end. A changed stretch is then judged by itself, between what comes before and what follows.
 */
export interface OrderTable {
  readonly order: readonly number[]
  readonly soFar: readonly (readonly number[])[]
  readonly toGo: readonly (readonly number[])[]
  readonly least: number
  /** No way of this order costs less: the sum of the nearest of each pair. */
  readonly bound: number
}

export function costTable(costs: OrderCosts, order: readonly number[]): OrderTable {
  const soFar: (readonly number[])[] = []
  order.forEach((bead, p) => {
    soFar.push(p === 0 ? beginnings(costs, bead) : step(costs, order[p - 1]!, soFar[p - 1]!, bead))
  })
  const toGo: (readonly number[])[] = new Array(order.length)
  for (let p = order.length - 1; p >= 0; p--)
    toGo[p] =
      p === order.length - 1
        ? endings(costs, order[p]!)
        : stepBack(costs, order[p]!, order[p + 1]!, toGo[p + 1]!)
  let least = Number.POSITIVE_INFINITY
  toGo[0]!.forEach((cost, way) => {
    least = Math.min(least, cost + soFar[0]![way]!)
  })
  const bound = order.slice(1).reduce((sum, bead, i) => sum + nearOf(costs, order[i], bead), 0)
  return { order, soFar, toGo, least, bound }
}

/** Least cost of one bead after another; nothing before the first or after the last. */
export const nearOf = ({ near, beads }: OrderCosts, a: number | undefined, b: number | undefined): number =>
  a === undefined || b === undefined ? 0 : near[a * beads + b]!

/** Cost of the whole order with the beads from i to k (exclusive) replaced; infinite once it cannot be less. */
export function spliceCost(
  costs: OrderCosts,
  table: OrderTable,
  i: number,
  k: number,
  beads: readonly number[],
): number {
  let before = i > 0 ? table.order[i - 1] : undefined
  let cost = i > 0 ? table.soFar[i - 1]! : undefined
  for (const bead of beads) {
    cost = before === undefined ? beginnings(costs, bead) : step(costs, before, cost!, bead)
    if (smallest(cost) >= table.least) return Number.POSITIVE_INFINITY
    before = bead
  }
  if (k === table.order.length) return smallestSum(cost!, endings(costs, before!))
  return smallestSum(step(costs, before!, cost!, table.order[k]!), table.toGo[k]!)
}

/** The cheapest way of each bead of the order. */
export function tableWays(costs: OrderCosts, { order, soFar, toGo }: OrderTable): number[] {
  const ways: number[] = []
  const size = costs.ways.length
  order.forEach((bead, p) => {
    const first = costs.first[bead]!
    let [best, least] = [first, Number.POSITIVE_INFINITY]
    toGo[p]!.forEach((cost, way) => {
      const reach = p === 0 ? soFar[0]![way]! : costs.link[ways[p - 1]! * size + first + way]!
      if (reach + cost < least) [best, least] = [first + way, reach + cost]
    })
    ways.push(best)
  })
  return ways
}

const beginnings = ({ begin, first }: OrderCosts, bead: number): readonly number[] =>
  begin.slice(first[bead]!, first[bead + 1]!)

const endings = ({ end, first }: OrderCosts, bead: number): readonly number[] =>
  end.slice(first[bead]!, first[bead + 1]!)

function step(
  { first, link, ways }: OrderCosts,
  from: number,
  cost: readonly number[],
  to: number,
): readonly number[] {
  const [a, b] = [first[from]!, first[to]!]
  const count = first[to + 1]! - b
  const next: number[] = []
  for (let k = 0; k < count; k++) {
    let least = Number.POSITIVE_INFINITY
    for (let i = 0; i < cost.length; i++)
      least = Math.min(least, cost[i]! + link[(a + i) * ways.length + b + k]!)
    next.push(least)
  }
  return next
}

function stepBack(
  { first, link, ways }: OrderCosts,
  from: number,
  to: number,
  cost: readonly number[],
): readonly number[] {
  const [a, b] = [first[from]!, first[to]!]
  const count = first[from + 1]! - a
  const next: number[] = []
  for (let i = 0; i < count; i++) {
    let least = Number.POSITIVE_INFINITY
    for (let k = 0; k < cost.length; k++)
      least = Math.min(least, cost[k]! + link[(a + i) * ways.length + b + k]!)
    next.push(least)
  }
  return next
}

function smallest(values: readonly number[]): number {
  let least = Number.POSITIVE_INFINITY
  for (const value of values) least = Math.min(least, value)
  return least
}

function smallestSum(a: readonly number[], b: readonly number[]): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < a.length; i++) least = Math.min(least, a[i]! + b[i]!)
  return least
}
