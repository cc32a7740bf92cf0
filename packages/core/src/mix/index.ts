export type { BandOptions } from './bootstrap.js'
export type { MixUse } from './check-mix.js'
export { checkMixUse } from './check-mix.js'
export { checkTests } from './check-tests.js'
export type { BandPoint, Candidate, CurveFit, FittedParameter, FittedPoint } from './curve-fit.js'
export type { CutLimits } from './cut-trials.js'
export { fitCutTrials } from './cut-trials.js'
export type { CutTrial, CutWindow } from './cut-window.js'
export { cutWindow, upperYield } from './cut-window.js'
export { defaultMix } from './default-mix.js'
export type { Arrhenius } from './equivalent-age.js'
export { ageFactor, equivalentAge, momentOfAge, temperatureOfFactor } from './equivalent-age.js'
export type { Activation } from './fit-activation.js'
export { fitMix } from './fit-mix.js'
export { formulas } from './formulas.js'
export type { FitOptions, MixFit } from './mix-fit.js'
export type {
  BondTest,
  MixModel,
  PumpingModel,
  StiffnessGrowth,
  StrengthGrowth,
  Tested,
  YieldGrowth,
} from './mix-model.js'
export type { MixTest, MixTestKind } from './mix-test.js'
export type { SettingTimes } from './setting.js'
export { patSlenderness, spreadYieldStress } from './spread.js'
export { scaleStiffness, stiffness } from './stiffness.js'
export { ageAtStrength, strengthAt } from './strength.js'
export { sayTestValue } from './test-values.js'
export { ageAtYield, scaleYield, yieldRate, yieldStress } from './yield-stress.js'
