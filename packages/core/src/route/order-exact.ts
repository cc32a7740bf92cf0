import type { OrderCosts } from './order.js'

/** Cheapest order over all subsets of beads and end states (Held–Karp). Indices of ways, in order. */
export function orderExactly(costs: OrderCosts): number[] {
  const size = costs.ways.length
  const subsets = 1 << costs.beads
  const best = new Float64Array(subsets * size).fill(Number.POSITIVE_INFINITY)
  const before = new Int16Array(subsets * size).fill(-1)
  costs.ways.forEach((way, i) => {
    best[(1 << way.bead) * size + i] = costs.begin[i]!
  })
  for (let subset = 1; subset < subsets; subset++)
    for (let i = 0; i < size; i++)
      if (best[subset * size + i]! < Number.POSITIVE_INFINITY) extend(costs, best, before, subset, i)
  return unroll(costs, best, before, subsets - 1)
}

function extend(costs: OrderCosts, best: Float64Array, before: Int16Array, subset: number, i: number): void {
  const size = costs.ways.length
  const so = best[subset * size + i]!
  for (let bead = 0; bead < costs.beads; bead++) {
    if (subset & (1 << bead)) continue
    const row = (subset | (1 << bead)) * size
    for (let k = costs.first[bead]!; k < costs.first[bead + 1]!; k++) {
      const cost = so + costs.link[i * size + k]!
      if (cost < best[row + k]!) {
        best[row + k] = cost
        before[row + k] = i
      }
    }
  }
}

function unroll(costs: OrderCosts, best: Float64Array, before: Int16Array, all: number): number[] {
  const size = costs.ways.length
  let last = 0
  for (let i = 1; i < size; i++)
    if (best[all * size + i]! + costs.end[i]! < best[all * size + last]! + costs.end[last]!) last = i
  const order: number[] = []
  for (let subset = all, i = last; i >= 0; ) {
    order.unshift(i)
    const earlier = before[subset * size + i]!
    subset &= ~(1 << costs.ways[i]!.bead)
    i = earlier
  }
  return order
}
