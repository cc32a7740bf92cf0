import type { OrderCosts } from './order.js'

/**
 * An order of beads with the cost of every way: `soFar` to have run up to a bead in a way, `toGo` from there to the
 * end, each position's ways from `widest` × position on. A changed stretch is then judged by itself, between what comes
 * before and what follows.
 */
export interface OrderTable {
  readonly order: readonly number[]
  readonly soFar: Float64Array
  readonly toGo: Float64Array
  readonly least: number
  /** Least of each position's `soFar` and `toGo`, and the sum of nearest pairs up to it. */
  readonly reach: Float64Array
  readonly rest: Float64Array
  readonly nearest: Float64Array
}

/** Costs of a bead's ways, from a place in an array on. */
interface Row {
  readonly costs: Float64Array
  readonly at: number
}

export function costTable(costs: OrderCosts, order: readonly number[]): OrderTable {
  const { widest } = costs
  const soFar = new Float64Array(order.length * widest)
  const toGo = new Float64Array(order.length * widest)
  const last = order.length - 1
  fill(costs, costs.begin, order[0]!, { costs: soFar, at: 0 })
  fill(costs, costs.end, order[last]!, { costs: toGo, at: last * widest })
  for (let p = 1; p <= last; p++)
    step(costs, order[p - 1]!, rowOf(soFar, p - 1, widest), order[p]!, rowOf(soFar, p, widest))
  for (let p = last - 1; p >= 0; p--)
    stepBack(costs, order[p]!, order[p + 1]!, rowOf(toGo, p + 1, widest), rowOf(toGo, p, widest))
  const least = smallestSum(costs, order[0]!, { costs: soFar, at: 0 }, { costs: toGo, at: 0 })
  return { order, soFar, toGo, least, ...boundsOf(costs, order, soFar, toGo) }
}

function boundsOf(costs: OrderCosts, order: readonly number[], soFar: Float64Array, toGo: Float64Array) {
  const [reach, rest, nearest] = [0, 1, 2].map(() => new Float64Array(order.length)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  order.forEach((bead, p) => {
    reach[p] = smallest(costs, bead, rowOf(soFar, p, costs.widest))
    rest[p] = smallest(costs, bead, rowOf(toGo, p, costs.widest))
    nearest[p] = p === 0 ? 0 : nearest[p - 1]! + nearOf(costs, order[p - 1], bead)
  })
  return { reach, rest, nearest }
}

/** The order costs at least this once the stretch from i to k (exclusive) has another sum of nearest pairs. */
export function boundOf(
  { order, reach, rest, nearest }: OrderTable,
  i: number,
  k: number,
  change: number,
): number {
  const before = i > 0 ? reach[i - 1]! - nearest[i - 1]! : 0
  const after = k < order.length ? rest[k]! + nearest[k]! : nearest[order.length - 1]!
  return before + after + change
}

const rowOf = (costs: Float64Array, position: number, widest: number): Row => ({
  costs,
  at: position * widest,
})

/** Least cost of one bead after another; nothing before the first or after the last. */
export const nearOf = ({ near, beads }: OrderCosts, a: number | undefined, b: number | undefined): number =>
  a === undefined || b === undefined ? 0 : near[a * beads + b]!

/** Costs whole orders with a stretch replaced: the search asks for thousands, so two rows serve them all. */
export function splicer(costs: OrderCosts) {
  const rows = [0, 1].map((): Row => ({ costs: new Float64Array(costs.widest), at: 0 }))
  const ends: Row = { costs: new Float64Array(costs.widest), at: 0 }
  /** Cost of the whole order with the beads from i to k (exclusive) replaced; infinite once it cannot be less. */
  return (table: OrderTable, i: number, k: number, beads: readonly number[]): number => {
    let before = i > 0 ? table.order[i - 1] : undefined
    let row = i > 0 ? rowOf(table.soFar, i - 1, costs.widest) : rows[0]!
    // What follows costs at least this.
    let ahead = k < table.order.length ? table.rest[k]! : 0
    for (let n = 0; n < beads.length; n++) ahead += nearOf(costs, beads[n], beads[n + 1] ?? table.order[k])
    for (let n = 0; n < beads.length; n++) {
      const next = rows[n % 2]!
      const bead = beads[n]!
      if (before === undefined) fill(costs, costs.begin, bead, next)
      else step(costs, before, row, bead, next)
      ahead -= nearOf(costs, bead, beads[n + 1] ?? table.order[k])
      if (smallest(costs, bead, next) + ahead >= table.least) return Number.POSITIVE_INFINITY
      before = bead
      row = next
    }
    if (k === table.order.length) {
      fill(costs, costs.end, before!, ends)
      return smallestSum(costs, before!, row, ends)
    }
    const after = table.order[k]!
    step(costs, before!, row, after, ends)
    return smallestSum(costs, after, ends, rowOf(table.toGo, k, costs.widest))
  }
}

/** The cheapest way of each bead of the order. */
export function tableWays(costs: OrderCosts, { order, soFar, toGo }: OrderTable): number[] {
  const ways: number[] = []
  const size = costs.ways.length
  order.forEach((bead, p) => {
    const first = costs.first[bead]!
    let [best, least] = [first, Number.POSITIVE_INFINITY]
    for (let way = 0; way < waysOf(costs, bead); way++) {
      const reach = p === 0 ? soFar[way]! : costs.link[ways[p - 1]! * size + first + way]!
      const cost = reach + toGo[p * costs.widest + way]!
      if (cost < least) [best, least] = [first + way, cost]
    }
    ways.push(best)
  })
  return ways
}

const waysOf = ({ first }: OrderCosts, bead: number): number => first[bead + 1]! - first[bead]!

function fill(costs: OrderCosts, from: Float64Array, bead: number, row: Row): void {
  for (let way = 0; way < waysOf(costs, bead); way++)
    row.costs[row.at + way] = from[costs.first[bead]! + way]!
}

/** Least cost to have run the second bead in each of its ways, from that of the first bead's. */
function step(costs: OrderCosts, from: number, row: Row, to: number, next: Row): void {
  const { first, link, ways } = costs
  const [a, b, size] = [first[from]!, first[to]!, ways.length]
  const [have, want] = [waysOf(costs, from), waysOf(costs, to)]
  for (let k = 0; k < want; k++) {
    let least = Number.POSITIVE_INFINITY
    for (let i = 0; i < have; i++) {
      const cost = row.costs[row.at + i]! + link[(a + i) * size + b + k]!
      if (cost < least) least = cost
    }
    next.costs[next.at + k] = least
  }
}

/** Least cost from the first bead in each of its ways to the end, from that of the second bead's. */
function stepBack(costs: OrderCosts, from: number, to: number, row: Row, next: Row): void {
  const { first, link, ways } = costs
  const [a, b, size] = [first[from]!, first[to]!, ways.length]
  const [have, want] = [waysOf(costs, from), waysOf(costs, to)]
  for (let i = 0; i < have; i++) {
    let least = Number.POSITIVE_INFINITY
    for (let k = 0; k < want; k++) {
      const cost = row.costs[row.at + k]! + link[(a + i) * size + b + k]!
      if (cost < least) least = cost
    }
    next.costs[next.at + i] = least
  }
}

function smallest(costs: OrderCosts, bead: number, row: Row): number {
  let least = Number.POSITIVE_INFINITY
  for (let way = 0; way < waysOf(costs, bead); way++) least = Math.min(least, row.costs[row.at + way]!)
  return least
}

function smallestSum(costs: OrderCosts, bead: number, a: Row, b: Row): number {
  let least = Number.POSITIVE_INFINITY
  for (let way = 0; way < waysOf(costs, bead); way++)
    least = Math.min(least, a.costs[a.at + way]! + b.costs[b.at + way]!)
  return least
}
