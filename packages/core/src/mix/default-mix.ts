import type { MixModel, StiffnessGrowth, YieldGrowth } from './mix-model.js'
import { scaleStiffness } from './stiffness.js'
import { scaleYield } from './yield-stress.js'

/** How far the lines are carried [s]: past the 90 min of the published tests, short of setting. */
const TESTED_TO = 8 * 3600

/** Uniaxial strength 5.984 kPa + 0.147 kPa/min of [Wolfs2018], as a yield stress in pure shear: divided by √3. */
const growing: YieldGrowth = {
  until: TESTED_TO,
  kind: 'linear',
  start: 5984 / Math.sqrt(3),
  rate: 147 / 60 / Math.sqrt(3),
}

/**
 * Young's modulus as a multiple of the yield stress. [Wolfs2018] measured 23 (secant, up to failure); a critical shear
 * strain of 2 % as in [Roussel2018] means E = 3·τ/0.02 = 150·τ. Buckling asks for the tangent: in between.
 */
const STIFFNESS_PER_YIELD = 120

const stiffening: StiffnessGrowth = {
  until: TESTED_TO,
  start: growing.start * STIFFNESS_PER_YIELD,
  rate: growing.rate * STIFFNESS_PER_YIELD,
  bend: 0,
}

/** Scatter between printable mortars, taken log-normal with 26 %: the 5 % point lies at 0.65 of the middle. */
const LOWER_SHARE = 0.65

/**
 * What is assumed while the site has no tests of its own: a one-component printable mortar for rotor-stator pumps.
 * Its bands are wide on purpose. Replace it with `fitMix` before anybody stands beside a wall planned with it.
 */
export const defaultMix: MixModel = {
  name: 'generic printable mortar',
  provenance: 'default',
  density: 2150,
  poisson: 0.3,
  fitted: { yield: growing, stiffness: stiffening },
  lower: { yield: scaleYield(growing, LOWER_SHARE), stiffness: scaleStiffness(stiffening, LOWER_SHARE) },
  lowerProbability: 0.05,
  lowerShare: LOWER_SHARE,
  strength: { ultimate: 35e6, rateConstant: 0.5 / 86_400, start: 0.3 * 86_400 },
  activation: 5000,
  reference: 20,
  openTime: 5400,
  testedTo: TESTED_TO,
  cutFrom: 5000,
  cutUntil: 30_000,
  cutSource:
    'common practice, no source: a cut stands clean from about 5 kPa; 30 kPa lies midway in "soft" (20–40 kPa) of [ISO14688]',
  plasticViscosity: 40,
  pumping: { yield: 800, slipYield: 100, slipViscosity: 500 },
  bag: 25,
  waterRatio: 0.16,
  binderShare: 0.35,
  hydrationHeat: 330e3,
  aggregate: 0.003,
  sources: {
    density: 'common practice, no source',
    poisson: '[Wolfs2018]',
    yield:
      '[Wolfs2018] uniaxial strength / √3, measured to 90 min and carried on: setting stiffens faster than the line [Perrot2015]',
    stiffness:
      '100 × yield stress: between [Wolfs2018] (23, secant) and [Roussel2018] (150, critical strain 2 %)',
    lower: '0.65 of the middle: scatter between mixes, common practice, no source',
    strength: 'common practice, no source; form [Carino1984]',
    activation: '[ASTM-C1074] Type I cement',
    openTime: 'common practice, no source',
    testedTo: 'assumed; the published tests behind it end at 90 min',
    plasticViscosity: 'common practice, no source',
    hydrationHeat:
      'about the heat of a Portland cement over its first three days, common practice, no source',
  },
}
