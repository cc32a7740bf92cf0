import { sayQuantity, type Units } from '../limit/index.js'
import { leastSquares, standardErrors } from '../numeric/index.js'
import type { Metres, MetresPerSecond } from '../quantity/index.js'
import type { Problem, Result } from '../result/index.js'
import { failure, success } from '../result/index.js'

/** A corner laid on trial: how slow the nozzle got, and how much wider the bead came out there. */
export interface CornerTrial {
  readonly at: string
  readonly cornerSpeed: MetresPerSecond
  readonly straightSpeed: MetresPerSecond
  readonly cornerWidth: Metres
  readonly straightWidth: Metres
}

export interface CornerModel {
  /** 0: the pump follows the slowing nozzle wholly; 1: it does not follow at all and the bead swells as the nozzle slows. */
  readonly swelling: number
  readonly error?: number
  /** Slowest corner, as a share of the straight speed, that keeps the bead within a tenth of its width. */
  readonly slowest: number
  readonly say: string
}

/** Share of its width that a bead may swell in a corner: common practice, no source. */
export const TOLERATED = 0.1

/**
 * Swelling of the bead in corners: width ratio = (straight speed / corner speed)^s, s from trials by least squares of
 * logarithms. With a constant flow and height the width grows nearly as the inverse speed (s = 1).
 *
 * Source   closed form for s = 0 and 1; the power between them is ours.
 * Range    the slow-downs tried.
 * Assumes  the bead's height is held by the nozzle.
 */
export function fitCornerModel(trials: readonly CornerTrial[], units: Units = 'metric'): Result<CornerModel> {
  const problems = [...trials.flatMap(trial => badTrial(trial, units)), ...noSlowDown(trials)]
  if (problems.length > 0) return failure(problems)
  const slowDowns = trials.map(trial => Math.log(trial.straightSpeed / trial.cornerSpeed))
  const swellings = trials.map(trial => Math.log(trial.cornerWidth / trial.straightWidth))
  const fit = leastSquares({
    residuals: ([s]) => slowDowns.map((slow, i) => s! * slow - swellings[i]!),
    start: [0.5],
  })
  const [swelling = 0] = fit.parameters
  const error = standardErrors(fit)?.[0]
  const slowest = swelling > 0 ? Math.min(1, (1 + TOLERATED) ** (-1 / swelling)) : 0
  return success({
    swelling,
    ...(error === undefined ? {} : { error }),
    slowest,
    say: `Corners swell with the ${swelling.toFixed(2)} power of the slow-down; ${
      slowest > 0 ? `keep at least ${(100 * slowest).toFixed(0)} % of the speed` : 'any slow-down tried keeps'
    } to stay within a tenth of the width.`,
  })
}

/**
 * How many times wider than on the straight a bead comes out where the nozzle is slow: w/w₀ = (v/v₀)^−s.
 *
 * @param slowDown  v/v₀ [1], speed in the corner over the speed before it
 * @param swelling  s [1], by the site's corner trials: 0 the pump follows the nozzle, 1 it does not
 *
 * Source   closed form for s = 0 and nearly for 1; the power between them is ours, derived from the site's trials.
 * Range    the slow-downs tried.
 * Assumes  the nozzle holds the height.
 */
export const cornerWidening = (slowDown: number, swelling: number): number => slowDown ** -swelling

function badTrial(trial: CornerTrial, units: Units): Problem[] {
  const speeds = [trial.cornerSpeed, trial.straightSpeed]
  const widths = [trial.cornerWidth, trial.straightWidth]
  if ([...speeds, ...widths].every(value => value > 0 && Number.isFinite(value))) return []
  const said = (values: readonly number[], unit: string) =>
    values.map(value => sayQuantity(1000 * value, unit, units)).join(' and ')
  return [
    {
      code: 'trial/corner-value',
      at: trial.at,
      say: `Speeds ${said(speeds, 'mm/s')}, widths ${said(widths, 'mm')}: all four are numbers above zero.`,
    },
  ]
}

const noSlowDown = (trials: readonly CornerTrial[]): Problem[] =>
  trials.some(({ cornerSpeed, straightSpeed }) => cornerSpeed < 0.95 * straightSpeed)
    ? []
    : [
        {
          code: 'trial/no-slow-down',
          at: 'corner trials',
          say: 'No corner was laid slower than its straight; lay one at half the speed, or nothing can be learnt of corners.',
        },
      ]
