export type { MixModel, StiffnessGrowth, StrengthGrowth, YieldGrowth } from './mix-model.js'
