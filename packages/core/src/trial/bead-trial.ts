import { sayQuantity, type Units } from '../limit/index.js'
import { mean, median, standardDeviation, studentQuantile } from '../numeric/index.js'
import type { CubicMetresPerSecond, Metres, MetresPerSecond } from '../quantity/index.js'
import type { Problem, Result } from '../result/index.js'
import { failure, success } from '../result/index.js'
import { beadArea } from '../wall/index.js'

/** A bead laid on trial and measured when it had come to rest. */
export interface BeadTrial {
  readonly at: string
  readonly flow: CubicMetresPerSecond
  readonly speed: MetresPerSecond
  readonly width: Metres
  readonly height: Metres
}

/** How the bead comes out against what flow and speed should make it. */
export interface BeadModel {
  /** Measured section over Q/v: under 1 the bead comes out thinner than set (entrapped air lost, slip), over 1 fatter. */
  readonly fill: number
  readonly fillError: number
  /** Scatter of one bead's width about the model [m], and the widths nineteen beads in twenty keep to either way. */
  readonly widthScatter: Metres
  readonly widthBand: Metres
  readonly points: readonly { readonly at: string; readonly expected: Metres; readonly residual: Metres }[]
  readonly outliers: readonly string[]
  readonly say: string
}

/** Beads farther than this many robust deviations from the middle are named; they stay in. */
const OUTLYING = 3.5

/**
 * Bead model from measured beads: section A = fill·Q/v, with the section a rectangle with half-round sides, so that the
 * width is w = A/h + h·(1 − π/4).
 *
 * Source   geometry, closed form; deviation by the median rule [Iglewicz1993].
 * Range    speeds, flows and heights of the trials.
 * Assumes  width ≥ height, and beads measured after they stopped spreading.
 */
export function fitBeadModel(trials: readonly BeadTrial[], units: Units = 'metric'): Result<BeadModel> {
  const problems = [...trials.flatMap(trial => badTrial(trial, units)), ...tooFew(trials)]
  if (problems.length > 0) return failure(problems)
  const fills = trials.map(trial => (beadArea(trial.width, trial.height) * trial.speed) / trial.flow)
  const fill = mean(fills)
  const fillError = standardDeviation(fills) / Math.sqrt(fills.length)
  const points = trials.map(trial => {
    const expected = beadWidth(fill, trial.flow, trial.speed, trial.height)
    return { at: trial.at, expected, residual: trial.width - expected }
  })
  const free = trials.length - 1
  const widthScatter = Math.sqrt(points.reduce((sum, { residual }) => sum + residual ** 2, 0) / free)
  const widthBand = widthScatter * studentQuantile(0.975, free)
  return success({
    fill,
    fillError,
    widthScatter,
    widthBand,
    points,
    outliers: outliersOf(trials, fills),
    say: sayModel(fill, fillError, widthBand, units),
  })
}

/**
 * Width of the bead that a flow and a speed lay at a height, in m.
 *
 *   w = f·Q/(v·h) + h·(1 − π/4)
 *
 * @param fill  f [1], by the site's bead trials; 1: all that is pumped lies
 *
 * Source   closed form: conservation of volume into a rectangle with half-round sides.
 * Range    w ≥ h.
 * Assumes  the nozzle holds the height.
 */
export const beadWidth = (
  fill: number,
  flow: CubicMetresPerSecond,
  speed: MetresPerSecond,
  height: Metres,
): Metres => (fill * flow) / speed / height + height * (1 - Math.PI / 4)

/**
 * Flow to pump for a bead of this width and height at a speed, in m³/s: Q = A·v/f, A of the bead's section.
 *
 * @param fill  f [1], by the site's bead trials
 *
 * Source   closed form: conservation of volume.
 * Range    width ≥ height.
 * Assumes  as `beadWidth`.
 */
export const flowForBead = (
  fill: number,
  width: Metres,
  height: Metres,
  speed: MetresPerSecond,
): CubicMetresPerSecond => (beadArea(width, height) * speed) / fill

function outliersOf(trials: readonly BeadTrial[], fills: readonly number[]): string[] {
  const middle = median(fills)
  const spread = 1.4826 * median(fills.map(fill => Math.abs(fill - middle)))
  return trials
    .filter((_, i) => spread > 0 && Math.abs(fills[i]! - middle) > OUTLYING * spread)
    .map(({ at }) => at)
}

function sayModel(fill: number, error: number, band: Metres, units: Units): string {
  const share = `${(100 * fill).toFixed(1)} ± ${(200 * error).toFixed(1)} %`
  const wanted =
    Math.abs(fill - 1) <= 2 * error ? 'as set' : fill < 1 ? 'thinner than set' : 'fatter than set'
  return `Beads come out ${wanted}: section ${share} of flow over speed; nineteen widths in twenty lie within ±${sayQuantity(1000 * band, 'mm', units)}.`
}

function badTrial({ at, flow, speed, width, height }: BeadTrial, units: Units): Problem[] {
  const size = (value: Metres) => sayQuantity(1000 * value, 'mm', units)
  const values = [flow, speed, width, height]
  if (!values.every(value => value > 0 && Number.isFinite(value)))
    return [
      {
        code: 'trial/bead-value',
        at,
        say: `Flow ${sayQuantity(60_000 * flow, 'L/min', units)}, speed ${sayQuantity(1000 * speed, 'mm/s', units)}, width ${size(width)}, height ${size(height)}: all four are numbers above zero.`,
      },
    ]
  if (width >= height) return []
  return [
    {
      code: 'trial/bead-upright',
      at,
      say: `The bead is ${size(width)} wide and ${size(height)} high; a laid bead is at least as wide as high. Check that the two are not swapped.`,
    },
  ]
}

const tooFew = (trials: readonly BeadTrial[]): Problem[] =>
  trials.length >= 3
    ? []
    : [
        {
          code: 'trial/too-few',
          at: 'bead trials',
          say: `A bead model needs three measured beads or more; there are ${trials.length}.`,
        },
      ]
