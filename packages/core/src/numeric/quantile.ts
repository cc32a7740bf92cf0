import { assert } from '../result/index.js'

/** The value below which a share of the sample lies, linear between order statistics (type 7 of [Hyndman1996]). */
export function quantile(sample: readonly number[], share: number): number {
  assert(sample.length > 0 && share >= 0 && share <= 1, 'a quantile needs a sample and a share of it')
  const sorted = [...sample].sort((a, b) => a - b)
  const place = share * (sorted.length - 1)
  const below = Math.floor(place)
  const above = Math.min(below + 1, sorted.length - 1)
  return sorted[below]! + (place - below) * (sorted[above]! - sorted[below]!)
}

export const median = (sample: readonly number[]): number => quantile(sample, 0.5)

export const mean = (sample: readonly number[]): number =>
  sample.reduce((sum, value) => sum + value, 0) / sample.length

/** Sample standard deviation (n − 1). */
export function standardDeviation(sample: readonly number[]): number {
  assert(sample.length > 1, 'scatter needs two values')
  const middle = mean(sample)
  return Math.sqrt(sample.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (sample.length - 1))
}
