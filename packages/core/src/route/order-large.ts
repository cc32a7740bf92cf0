import type { OrderCosts } from './order.js'

/** A good order for many beads: nearest first, then exchanges while they help. Indices of ways, in order. */
export function orderNearly(costs: OrderCosts): number[] {
  let order = nearestFirst(costs)
  let least = bestWays(costs, order).cost
  for (let round = 0; round < mostRounds; round++) {
    const better = firstImprovement(costs, order, least)
    if (!better) break
    order = better.order
    least = better.cost
  }
  return bestWays(costs, order).ways
}

/** Rounds end by themselves long before; the bound keeps a pathological plan from holding the app. */
const mostRounds = 60

/** Every stretch turned round (2-opt) or moved elsewhere (Or-opt, up to three beads), keeping each gain at once. */
function firstImprovement(costs: OrderCosts, start: readonly number[], cost: number) {
  let order: readonly number[] = start
  let least = cost
  const n = start.length
  for (let i = 0; i < n; i++)
    for (let k = i + 1; k <= n; k++)
      for (const trial of exchanges(order, i, k)) {
        const tried = bestWays(costs, trial).cost
        if (tried < least - 1e-9) [order, least] = [trial, tried]
      }
  return least < cost - 1e-9 ? { order: [...order], cost: least } : undefined
}

function exchanges(order: readonly number[], i: number, k: number): number[][] {
  const stretch = order.slice(i, k)
  const trials = stretch.length > 1 ? [[...order.slice(0, i), ...stretch.reverse(), ...order.slice(k)]] : []
  if (k - i > 3) return trials
  const piece = order.slice(i, k)
  const rest = [...order.slice(0, i), ...order.slice(k)]
  for (let at = 0; at <= rest.length; at++)
    if (at !== i) trials.push([...rest.slice(0, at), ...piece, ...rest.slice(at)])
  return trials
}

/** Beads in order, each the cheapest to reach from the last one's best way. */
function nearestFirst(costs: OrderCosts): number[] {
  const size = costs.ways.length
  const left = new Set(Array.from({ length: costs.beads }, (_, bead) => bead))
  const order: number[] = []
  let at = -1
  while (left.size > 0) {
    let next = -1
    let least = Number.POSITIVE_INFINITY
    for (let k = 0; k < size; k++) {
      if (!left.has(costs.ways[k]!.bead)) continue
      const cost = at < 0 ? costs.begin[k]! : costs.link[at * size + k]!
      if (cost < least) [least, next] = [cost, k]
    }
    at = next
    order.push(costs.ways[at]!.bead)
    left.delete(costs.ways[at]!.bead)
  }
  return order
}

/** For a fixed order of beads the best way of each, exactly: shortest path through the ways. */
export function bestWays(costs: OrderCosts, order: readonly number[]): { cost: number; ways: number[] } {
  const size = costs.ways.length
  const { first, link } = costs
  const trail: Int32Array[] = []
  let so = costs.begin.slice(first[order[0]!]!, first[order[0]! + 1]!)
  for (let step = 1; step < order.length; step++) {
    const [from, to] = [order[step - 1]!, order[step]!]
    const width = first[to + 1]! - first[to]!
    const next = new Float64Array(width).fill(Number.POSITIVE_INFINITY)
    const came = new Int32Array(width)
    for (let i = 0; i < so.length; i++) {
      const row = (first[from]! + i) * size + first[to]!
      for (let k = 0; k < width; k++) {
        const cost = so[i]! + link[row + k]!
        if (cost < next[k]!) [next[k], came[k]] = [cost, i]
      }
    }
    trail.push(came)
    so = next
  }
  const lastBead = order.at(-1)!
  const totals = so.map((cost, i) => cost + costs.end[first[lastBead]! + i]!)
  const last = totals.indexOf(Math.min(...totals))
  return { cost: totals[last]!, ways: traceBack(costs, order, trail, last) }
}

function traceBack(
  costs: OrderCosts,
  order: readonly number[],
  trail: readonly Int32Array[],
  last: number,
): number[] {
  const ways: number[] = new Array(order.length)
  let way = last
  for (let step = order.length - 1; step >= 0; step--) {
    ways[step] = costs.first[order[step]!]! + way
    if (step > 0) way = trail[step - 1]![way]!
  }
  return ways
}
