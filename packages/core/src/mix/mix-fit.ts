import type { Units } from '../limit/index.js'
import type { Celsius, KilogramsPerCubicMetre, Share } from '../quantity/index.js'
import type { BandOptions } from './bootstrap.js'
import type { CurveFit } from './curve-fit.js'
import type { Activation } from './fit-activation.js'
import type { MixModel, StiffnessGrowth, StrengthGrowth, YieldGrowth } from './mix-model.js'
import type { SettingTimes } from './setting.js'

export interface FitOptions {
  /** Name of the mix, and of the file its tests came from. */
  readonly name: string
  readonly provenance: string
  /** Uniform random numbers from 0 up to 1 for the bootstrap. */
  readonly random: () => number
  /** 400 unless said otherwise. */
  readonly replicates?: number
  /** Chance of lying under the lower band: 5 % unless the job says otherwise. */
  readonly probability?: Share
  /** `batch` unless said otherwise. */
  readonly about?: BandOptions['about']
  readonly reference?: Celsius
  /** Tests the lead leaves out, by their place (`tests.csv:7`). */
  readonly leaveOut?: readonly string[]
  /** Where the values come from that the tests do not cover; the default mix unless said otherwise. */
  readonly base?: MixModel
  /** Of the words; metric unless said. */
  readonly units?: Units
}

/** Growths with their band, from measurement (`curve`) or from what stands in for it (`assumed` says what). */
export interface StiffnessPart {
  readonly growth: StiffnessGrowth
  readonly lower: StiffnessGrowth
  readonly curve?: CurveFit<StiffnessGrowth>
  readonly assumed: readonly string[]
}

export interface StrengthPart {
  readonly growth: StrengthGrowth
  readonly curve?: CurveFit<StrengthGrowth>
  readonly assumed: readonly string[]
}

/** A fitted mix and everything the lead needs to believe or to doubt it. */
export interface MixFit {
  readonly mix: MixModel
  readonly density: KilogramsPerCubicMetre
  readonly yield: CurveFit<YieldGrowth>
  /** Absent: no stiffness tests, the stiffness follows the yield stress. */
  readonly stiffness?: CurveFit<StiffnessGrowth>
  readonly strength?: CurveFit<StrengthGrowth>
  readonly setting?: SettingTimes
  readonly activation: Activation
  /** Sentences: what no test covers and what stands in for it. */
  readonly assumed: readonly string[]
  /** Sentences: what in the tests asks for a second look. */
  readonly cautions: readonly string[]
  /** Places of the tests that lie far off their curve, all of them still in. */
  readonly outliers: readonly string[]
  readonly leftOut: readonly string[]
}
