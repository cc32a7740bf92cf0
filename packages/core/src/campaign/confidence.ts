import { assert } from '../result/index.js'

/** 95 % two-sided normal quantile. */
const Z95 = 1.959963984540054

/**
 * 95 % interval of a chance seen `hits` times in `count` independent trials.
 *
 *   centre = (p + z²/2n) / (1 + z²/n),  half = z/(1 + z²/n) · √( p(1−p)/n + z²/4n² )
 *
 * @param hits   how often it happened [1], at most count
 * @param count  how often it was tried [1], > 0
 *
 * Source   [Wilson1927], from memory.
 * Range    any count > 0; honest at 0 and at all hits, where the normal interval has no width.
 * Assumes  independent trials; replays of the same weather year are only partly so.
 */
export function chanceInterval(hits: number, count: number): readonly [number, number] {
  assert(count > 0 && hits >= 0 && hits <= count, 'a chance is seen so many times of so many')
  const p = hits / count
  const shrink = 1 + Z95 ** 2 / count
  const centre = (p + Z95 ** 2 / (2 * count)) / shrink
  const half = (Z95 / shrink) * Math.sqrt((p * (1 - p)) / count + Z95 ** 2 / (4 * count ** 2))
  return [Math.max(0, centre - half), Math.min(1, centre + half)]
}

/**
 * The value that a share of the sample does not exceed: the smallest x with at least `share` of all values ≤ x.
 *
 * @param sorted  values in rising order, at least one
 * @param share   0–1
 *
 * Source   definition of the empirical quantile (inverse of the empirical distribution).
 * Range    0 < share ≤ 1.
 * Assumes  nothing.
 */
export function empiricalQuantile<T>(sorted: readonly T[], share: number): T {
  assert(sorted.length > 0 && share > 0 && share <= 1, 'a quantile of something')
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length - 1e-9) - 1)]!
}

/**
 * Ranks (from 1) between which the true quantile lies with about 95 % confidence, for n independent values:
 * n·p ∓ z·√(n·p·(1−p)).
 *
 * Source   normal approximation of the binomial count below the quantile; common practice, no source.
 * Range    n·p·(1−p) ≥ 5; fewer values give the ends of the sample.
 * Assumes  independent values.
 */
export function quantileRanks(count: number, share: number): readonly [number, number] {
  const half = Z95 * Math.sqrt(count * share * (1 - share))
  return [Math.max(1, Math.floor(count * share - half)), Math.min(count, Math.ceil(count * share + half) + 1)]
}

/**
 * Mean of a sample, and the half width of its 95 % interval.
 *
 *   within = z · s / √n,  s² = Σ(x − mean)² / (n − 1)
 *
 * @param values  independent values, at least one; of a single one nothing is known: the width is infinite
 *
 * Source   central limit theorem, textbook.
 * Range    n ≥ 30 or so; fewer and skewed values give too narrow an interval.
 * Assumes  independent values of one distribution.
 */
export function meanWithin(values: readonly number[]): { readonly mean: number; readonly within: number } {
  assert(values.length > 0, 'a mean of something')
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  const within =
    values.length > 1
      ? Z95 * Math.sqrt(squares / (values.length - 1) / values.length)
      : Number.POSITIVE_INFINITY
  return { mean, within }
}
