import { assert } from '../result/index.js'

const GOLDEN = (Math.sqrt(5) - 1) / 2

/**
 * Place of the least value between two ends, by golden section.
 *
 * Source   [Kiefer1953], from memory.
 * Range    one valley between the ends; with several it ends in one of them.
 * Assumes  a continuous function.
 */
export function minimum(f: (x: number) => number, from: number, to: number, tolerance: number): number {
  assert(to > from && tolerance > 0, 'a search has a span and a tolerance')
  let [low, high] = [from, to]
  let [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
  let [fa, fb] = [f(a), f(b)]
  while (high - low > tolerance) {
    if (fa <= fb) {
      ;[high, b, fb] = [b, a, fa]
      a = high - GOLDEN * (high - low)
      fa = f(a)
    } else {
      ;[low, a, fa] = [a, b, fb]
      b = low + GOLDEN * (high - low)
      fb = f(b)
    }
  }
  return (low + high) / 2
}
