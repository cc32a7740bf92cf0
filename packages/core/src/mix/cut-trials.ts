import type { Problem, Result } from '../result/index.js'
import { failure, success } from '../result/index.js'
import type { CutTrial } from './cut-window.js'
import type { MixModel, YieldGrowth } from './mix-model.js'
import { yieldStress } from './yield-stress.js'

export type CutLimits = Pick<MixModel, 'cutFrom' | 'cutUntil' | 'cutSource'>

/**
 * Cutting thresholds from cuts tried on the site's own wall: the softest clean cut above every slumped one, and the
 * stiffest clean cut below every one that was too stiff. A side that no trial reached keeps what the mix had.
 */
export function fitCutTrials(
  trials: readonly CutTrial[],
  growth: YieldGrowth,
  before: CutLimits,
): Result<CutLimits> {
  const problems = badAges(trials)
  if (problems.length > 0) return failure(problems)
  const stressOf = (outcome: CutTrial['outcome']) =>
    trials.filter(trial => trial.outcome === outcome).map(trial => yieldStress(growth, trial.age))
  const slumped = Math.max(0, ...stressOf('slumped'))
  const stiff = Math.min(Infinity, ...stressOf('too-stiff'))
  const clean = stressOf('clean').filter(stress => stress > slumped && stress < stiff)
  if (clean.length === 0) return failure([noCleanCut(slumped, stiff)])
  const cutFrom = slumped > 0 ? Math.min(...clean) : Math.min(before.cutFrom, ...clean)
  const cutUntil = Number.isFinite(stiff) ? Math.max(...clean) : Math.max(before.cutUntil, ...clean)
  return success({ cutFrom, cutUntil, cutSource: `${trials.length} cuts tried on site` })
}

const badAges = (trials: readonly CutTrial[]): Problem[] =>
  trials.flatMap((trial, index) =>
    trial.age >= 0 && Number.isFinite(trial.age)
      ? []
      : [
          {
            code: 'mix/cut-trial-age',
            at: `cut trial ${index + 1}`,
            say: `The layer was ${trial.age} s old when it was cut; give an age of 0 s or more.`,
          },
        ],
  )

const kilopascals = (stress: number): string => `${(stress / 1000).toFixed(1)} kPa`

const noCleanCut = (slumped: number, stiff: number): Problem => ({
  code: 'mix/no-clean-cut',
  at: 'cut trials',
  say: `No clean cut lies above the stiffest slumped one (${kilopascals(slumped)}) and below the softest one too stiff (${
    Number.isFinite(stiff) ? kilopascals(stiff) : 'none'
  }); try cuts between the two, or take out the trial that contradicts.`,
})
