import type { Units } from '@dawnlift/core/limit'
import type { KilogramsPerCubicMetre } from '@dawnlift/core/quantity'
import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import {
  type BeadModel,
  type CornerModel,
  fitBeadModel,
  fitCornerModel,
  fitLags,
  fitPumpCurve,
  type Lags,
  type PumpCurve,
  type TrialsSoFar,
} from '@dawnlift/core/trial'

/** What a sheet of trials tells; a kind with too few of them is left out and named. */
export interface TrialFits {
  readonly pump?: PumpCurve
  readonly bead?: BeadModel
  readonly lags: Lags
  readonly corner?: CornerModel
  readonly notYet: readonly Problem[]
}

/** Not a mistake in the sheet: there is only nothing to be learnt yet. */
const notYetCodes = ['trial/too-few', 'trial/no-slow-down']

/** Every model the sheet has trials for; or every trial that cannot be. */
export function fitTrials(
  trials: TrialsSoFar,
  density: KilogramsPerCubicMetre,
  units: Units = 'metric',
): Result<TrialFits> {
  const pump = some(trials.pump, each => fitPumpCurve(each, density, units))
  const bead = some(trials.bead, each => fitBeadModel(each, units))
  const corner = some(trials.corner, each => fitCornerModel(each, units))
  const lags = fitLags(trials.lag, units)
  const problems = [pump, bead, corner, lags].flatMap(each => (each && !each.ok ? each.problems : []))
  const wrong = problems.filter(({ code }) => !notYetCodes.includes(code))
  if (wrong.length > 0 || !lags.ok) return failure(wrong)
  return success({
    ...(pump?.ok ? { pump: pump.value } : {}),
    ...(bead?.ok ? { bead: bead.value } : {}),
    ...(corner?.ok ? { corner: corner.value } : {}),
    lags: lags.value,
    notYet: problems,
  })
}

const some = <T, V>(trials: readonly T[], fit: (trials: readonly T[]) => Result<V>): Result<V> | undefined =>
  trials.length > 0 ? fit(trials) : undefined
