import type { Machine } from '@dawnlift/core/machine'
import type { MixModel } from '@dawnlift/core/mix'

const growth = {
  yield: { kind: 'linear', start: 800, rate: 0.5 },
  stiffness: { start: 40_000, rate: 20, bend: 0 },
} as const

/** An invented gantry and pump. */
export const smallMachine: Machine = {
  name: 'Beam and two towers',
  reach: { x: [-1, 8], y: [-1, 6], z: [0, 4] },
  keepOut: [],
  printSpeedMost: 0.25,
  travelSpeed: 0.4,
  liftSpeed: 0.1,
  acceleration: 0.5,
  cornerDeviation: 0.005,
  headingRate: 2,
  headingAcceleration: 8,
  headingTravel: 12.6,
  travelClearance: 0.1,
  pump: {
    flowLeast: 0.00005,
    flowMost: 0.0006,
    startLag: 1,
    stopLag: 1,
    pressureMost: 4e6,
    settingPerFlow: 1e6,
  },
  words: { rotary: 'C', pumpOn: 'M3', units: 'G21' },
}

/** An invented mix with round numbers. */
export const smallMix: MixModel = {
  name: 'Grey trial mix',
  provenance: 'default',
  density: 2150,
  poisson: 0.3,
  fitted: growth,
  lower: growth,
  lowerProbability: 0.05,
  strength: { ultimate: 38e6, rateConstant: 1e-6, start: 18_000 },
  activation: 4000,
  reference: 20,
  openTime: 5400,
  testedTo: 10_800,
  cutFrom: 2000,
  cutUntil: 12_000,
  cutSource: 'common practice, no source',
  plasticViscosity: 30,
  bag: 25,
  waterRatio: 0.16,
  binderShare: 0.35,
  hydrationHeat: 350_000,
  aggregate: 0.004,
}
