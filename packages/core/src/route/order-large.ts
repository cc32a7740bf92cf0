import type { OrderCosts } from './order.js'
import { boundOf, costTable, nearOf, type OrderTable, splicer, tableWays } from './order-table.js'

/**
 * A good order for many beads: nearest first from a few beads, then exchanges while they help. Indices of ways.
 * `like`: an order of beads known to be good, tried as well.
 */
export function orderNearly(costs: OrderCosts, like?: readonly number[]): number[] {
  const starts = like ? [like] : startingBeads(costs).map(bead => nearestFirst(costs, bead))
  const improved = starts.map(order => improve(costs, order))
  return tableWays(
    costs,
    improved.reduce((best, each) => (each.least < best.least - 1e-9 ? each : best)),
  )
}

/** Exchanges end by themselves long before; the bound keeps a pathological plan from holding the app. */
const mostRounds = 60

/** Beads to begin with: spread over the list, whose order follows the plan. */
const startingBeads = ({ beads }: OrderCosts): number[] => [...new Set([0, Math.floor(beads / 2), beads - 1])]

type SpliceCost = ReturnType<typeof splicer>

/** Every stretch turned round (2-opt) or moved elsewhere (Or-opt, up to three beads), keeping each gain at once. */
function improve(costs: OrderCosts, start: readonly number[]): OrderTable {
  let table = costTable(costs, start)
  const spliceCost = splicer(costs)
  const n = start.length
  const stretches = (n * (n + 1)) / 2
  let sinceGain = 0
  for (let round = 0; round < mostRounds; round++)
    for (let i = 0; i < n; i++)
      for (let k = i + 1; k <= n; k++) {
        const before = table
        table = turnedRound(costs, spliceCost, table, i, k)
        if (k - i <= 3) table = movedAway(costs, spliceCost, table, i, k)
        sinceGain = table === before ? sinceGain + 1 : 0
        // All have been tried on this very order.
        if (sinceGain === stretches) return table
      }
  return table
}

function turnedRound(
  costs: OrderCosts,
  spliceCost: SpliceCost,
  table: OrderTable,
  i: number,
  k: number,
): OrderTable {
  if (k - i < 2) return table
  const { order } = table
  const [before, first, last, after] = [order[i - 1], order[i], order[k - 1], order[k]]
  const lost = nearOf(costs, before, first) + nearOf(costs, last, after)
  const gained = nearOf(costs, before, last) + nearOf(costs, first, after)
  if (cannotHelp(table, i, k, gained - lost)) return table
  return spliced(costs, spliceCost, table, i, k, table.order.slice(i, k).reverse())
}

function movedAway(
  costs: OrderCosts,
  spliceCost: SpliceCost,
  table: OrderTable,
  i: number,
  k: number,
): OrderTable {
  const n = table.order.length
  const { order } = table
  const [before, first, last, after] = [order[i - 1], order[i], order[k - 1], order[k]]
  const left = nearOf(costs, before, after) - nearOf(costs, before, first) - nearOf(costs, last, after)
  for (let at = 0; at <= n; at++) {
    if (at >= i && at <= k) continue
    const [a, b] = [order[at - 1], order[at]]
    const put = nearOf(costs, a, first) + nearOf(costs, last, b) - nearOf(costs, a, b)
    if (cannotHelp(table, Math.min(at, i), Math.max(at, k), left + put)) continue
    const piece = order.slice(i, k)
    const better =
      at < i
        ? spliced(costs, spliceCost, table, at, k, [...piece, ...order.slice(at, i)])
        : spliced(costs, spliceCost, table, i, at, [...order.slice(k, at), ...piece])
    // what stood at i has moved: the caller goes on from the new order
    if (better !== table) return better
  }
  return table
}

/** Even the nearest ways of every pair would not make it cheaper. */
const cannotHelp = (table: OrderTable, i: number, k: number, change: number): boolean =>
  boundOf(table, i, k, change) >= table.least - 1e-9

/** The order with the beads from i to k replaced, if that is cheaper. */
function spliced(
  costs: OrderCosts,
  spliceCost: SpliceCost,
  table: OrderTable,
  i: number,
  k: number,
  beads: readonly number[],
): OrderTable {
  if (spliceCost(table, i, k, beads) >= table.least - 1e-9) return table
  return costTable(costs, [...table.order.slice(0, i), ...beads, ...table.order.slice(k)])
}

/** Beads in order, each the cheapest to reach from the last one's best way. */
function nearestFirst({ ways, first, link, beads }: OrderCosts, start: number): number[] {
  const taken = new Uint8Array(beads)
  const order = [start]
  taken[start] = 1
  let at = first[start]!
  while (order.length < beads) {
    let next = -1
    let least = Number.POSITIVE_INFINITY
    for (let k = 0; k < ways.length; k++) {
      const cost = link[at * ways.length + k]!
      if (cost < least && taken[ways[k]!.bead] === 0) [least, next] = [cost, k]
    }
    at = next
    order.push(ways[at]!.bead)
    taken[ways[at]!.bead] = 1
  }
  return order
}
