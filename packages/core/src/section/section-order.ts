import type { Point } from '../geometry/index.js'

/** `A`, `B`, … `Z`, `AA`, `AB`, … */
export function sectionName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26))
  return index < 26 ? letter : sectionName(Math.floor(index / 26) - 1) + letter
}

/** An order to walk the middles in: from the one nearest the lower left corner, always on to the nearest next. */
export function walkingOrder(middles: readonly Point[]): readonly number[] {
  const left = new Set(middles.keys())
  const order: number[] = []
  const nearest = (cost: (i: number) => number) =>
    [...left].reduce<number | undefined>(
      (best, i) => (best === undefined || cost(i) < cost(best) - 1e-9 ? i : best),
      undefined,
    )
  let next = nearest(i => middles[i]![0] + middles[i]![1])
  while (next !== undefined) {
    order.push(next)
    left.delete(next)
    const [x, y] = middles[next]!
    next = nearest(i => Math.hypot(middles[i]![0] - x, middles[i]![1] - y))
  }
  return order
}
