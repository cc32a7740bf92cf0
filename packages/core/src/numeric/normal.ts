import { assert } from '../result/index.js'

/**
 * The standard normal value below which a share of cases lies.
 *
 * Source   [AbramowitzStegun] 26.2.23, from memory.
 * Range    0 < share < 1.
 * Scatter  4.5e-4 at most.
 * Assumes  nothing more; good for bands, not for tails beyond one in a million.
 */
export function normalQuantile(share: number): number {
  assert(share > 0 && share < 1, `a share lies between 0 and 1 (found ${share})`)
  if (share > 0.5) return -normalQuantile(1 - share)
  const t = Math.sqrt(-2 * Math.log(share))
  const top = 2.515517 + t * (0.802853 + t * 0.010328)
  const bottom = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308))
  return top / bottom - t
}

/**
 * Student's t value of a share with few degrees of freedom: the normal value and four terms of its expansion.
 *
 * Source   [AbramowitzStegun] 26.7.5, from memory.
 * Range    one degree of freedom or more; shares of 1 … 99 %.
 * Scatter  5 % low at one degree of freedom, 1 % at two, less beyond (at 5 and 95 %).
 * Assumes  normal scatter of unknown size.
 */
export function studentQuantile(share: number, free: number): number {
  assert(free >= 1, 'scatter was estimated from at least one degree of freedom')
  const z = normalQuantile(share)
  const first = (z ** 3 + z) / 4
  const second = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96
  const third = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384
  const fourth = (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92_160
  return z + first / free + second / free ** 2 + third / free ** 3 + fourth / free ** 4
}
