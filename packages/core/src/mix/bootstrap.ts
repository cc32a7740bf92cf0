import type { LeastSquaresFit } from '../numeric/index.js'
import { normalQuantile, quantile, standardDeviation, studentQuantile } from '../numeric/index.js'
import type { Seconds, Share } from '../quantity/index.js'
import type { BandPoint } from './curve-fit.js'
import { fitFamily, type GrowthFamily } from './growth-family.js'
import type { Observation } from './mix-test.js'

/** How a band is drawn about a fitted curve. */
export interface BandOptions {
  /** Uniform numbers from 0 up to 1. */
  readonly random: () => number
  readonly replicates: number
  /** Chance of lying under the lower edge, and as much over the upper one. */
  readonly probability: Share
  /** `batch`: where the next batch's value may lie (a characteristic value); `curve`: where the mean curve may lie. */
  readonly about: 'batch' | 'curve'
}

/** No test of fresh mortar repeats better than this; fewer tests than that would show by luck. */
const LEAST_SCATTER = 0.08
const GRID = 12

/**
 * Bootstrap band: tests are made anew from the fitted curve and its own residuals, and fitted again, many times.
 * Residuals are set free of their leverage, and widened where few tests left few degrees of freedom.
 *
 * Source   [Efron1993], residual resampling, from memory; characteristic value as in [EN1990].
 * Range    three tests or more; few of them make it wide.
 * Assumes  the right family of curves, and residuals that may be exchanged between ages.
 */
export function bootstrapBand<Growth>(
  family: GrowthFamily<Growth>,
  observations: readonly Observation[],
  fit: LeastSquaresFit,
  options: BandOptions,
): BandPoint[] {
  const oldest = Math.max(...observations.map(({ age }) => age))
  const growth = family.make(fit.parameters, oldest)
  const noise = freeResiduals(fit, options.probability)
  const draw = () => noise[Math.floor(options.random() * noise.length)]!
  const ages = Array.from({ length: GRID + 1 }, (_, i) => (oldest * i) / GRID)
  const replicas = Array.from({ length: options.replicates }, () => {
    const remade = observations.map(o => ({ ...o, value: family.value(growth, o.age) * Math.exp(draw()) }))
    const again = family.make(fitFamily(family, remade, [fit.parameters]).parameters, oldest)
    const batch = options.about === 'batch' ? Math.exp(draw()) : 1
    return ages.map(age => family.value(again, age) * batch)
  })
  return ages.map((age, i) =>
    bandAt(
      age,
      family.value(growth, age),
      replicas.map(r => r[i]!),
      options.probability,
    ),
  )
}

/** An edge of the band can never cross the best estimate, however few replicates there are. */
function bandAt(age: Seconds, fitted: number, sample: readonly number[], probability: Share): BandPoint {
  const lower = Math.min(fitted, quantile(sample, probability))
  return { age, fitted, lower, upper: Math.max(fitted, quantile(sample, 1 - probability)) }
}

function freeResiduals(fit: LeastSquaresFit, probability: Share): number[] {
  const free = fit.residuals.length - fit.parameters.length
  const loose = fit.residuals.map((r, i) => r / Math.sqrt(Math.max(0.05, 1 - fit.leverages[i]!)))
  const middle = loose.reduce((sum, r) => sum + r, 0) / loose.length
  const centred = loose.map(r => r - middle)
  const found = standardDeviation(centred)
  const widened =
    Math.max(found, LEAST_SCATTER) *
    (studentQuantile(probability, Math.max(1, free)) / normalQuantile(probability))
  // Points that lie on the curve exactly have no residuals to draw from: a symmetric pair stands in.
  return found > 0 ? centred.map(r => (r * widened) / found) : [-widened, widened]
}

/**
 * A growth of the same family that keeps below (or above) the band's edge at every age of it. Where the band is widest
 * decides, so that it lies a few per cent outside the band elsewhere: one curve for all ages, on the safe side.
 */
export function edgeGrowth<Growth>(
  family: GrowthFamily<Growth>,
  band: readonly BandPoint[],
  edge: 'lower' | 'upper',
  start: readonly number[],
): Growth {
  const points = band.map(point => ({ at: 'band', age: point.age, value: Math.max(point[edge], 1e-9) }))
  const oldest = Math.max(...points.map(({ age }) => age))
  const growth = family.make(fitFamily(family, points, [start]).parameters, oldest)
  const ratios = points.map(({ age, value }) => value / family.value(growth, age))
  const share = edge === 'lower' ? Math.min(1, ...ratios) : Math.max(1, ...ratios)
  return family.scale(growth, share)
}
