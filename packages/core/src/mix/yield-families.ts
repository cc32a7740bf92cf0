import { quantile } from '../numeric/index.js'
import type { GrowthFamily } from './growth-family.js'
import type { YieldGrowth } from './mix-model.js'
import type { Observation } from './mix-test.js'
import { scaleYield, yieldStress } from './yield-stress.js'

const value = yieldStress
const scale = scaleYield

const linear: GrowthFamily<YieldGrowth> = {
  kind: 'linear',
  names: ['start', 'rate'],
  units: ['Pa', 'Pa/s'],
  fewest: 3,
  starts: observations => [[lowest(observations), meanRate(observations)]],
  bounds: () => ({ least: [1, 0], most: [1e6, 1e4] }),
  make: ([start, rate]) => ({ kind: 'linear', start: start!, rate: rate! }),
  value,
  scale,
}

const bilinear: GrowthFamily<YieldGrowth> = {
  kind: 'bilinear',
  names: ['start', 'earlyRate', 'kneeAge', 'lateRate'],
  units: ['Pa', 'Pa/s', 's', 'Pa/s'],
  fewest: 7,
  // The misfit has a valley between any two ages: one start in each, at most twelve.
  starts: observations => {
    const rate = meanRate(observations)
    const share = (i: number) => (i + 0.5) / 12
    const knees = Array.from({ length: 12 }, (_, i) => agesQuantile(observations, share(i)))
    return knees.map(knee => [lowest(observations), rate, knee, rate])
  },
  // At least two tests on either side of the knee, or one of the slopes rests on nothing.
  bounds: observations => ({
    least: [1, 0, secondAge(observations), 0],
    most: [1e6, 1e5, secondLastAge(observations), 1e5],
  }),
  make: ([start, earlyRate, kneeAge, lateRate]) => ({
    kind: 'bilinear',
    start: start!,
    earlyRate: earlyRate!,
    kneeAge: kneeAge!,
    lateRate: lateRate!,
  }),
  value,
  scale,
}

const exponential: GrowthFamily<YieldGrowth> = {
  kind: 'exponential',
  names: ['start', 'rate', 'time'],
  units: ['Pa', 'Pa/s', 's'],
  fewest: 5,
  starts: observations =>
    [0.3, 1, 3].map(share => [
      lowest(observations),
      meanRate(observations) / 2,
      share * Math.max(...observations.map(o => o.age)),
    ]),
  // A time far beyond the tests is the straight line again; one far below is a jump between two tests.
  bounds: observations => {
    const oldest = Math.max(...observations.map(({ age }) => age))
    return { least: [1, 1e-6, oldest / 20], most: [1e6, 1e4, oldest * 20] }
  },
  make: ([start, rate, time]) => ({ kind: 'exponential', start: start!, rate: rate!, time: time! }),
  value,
  scale,
}

export const yieldFamilies: readonly GrowthFamily<YieldGrowth>[] = [linear, bilinear, exponential]

const lowest = (observations: readonly Observation[]): number =>
  Math.max(1, Math.min(...observations.map(o => o.value)))

function meanRate(observations: readonly Observation[]): number {
  const ages = observations.map(({ age }) => age)
  const values = observations.map(o => o.value)
  const span = Math.max(...ages) - Math.min(...ages)
  return Math.max(1e-3, (Math.max(...values) - Math.min(...values)) / Math.max(span, 1))
}

const sortedAges = (observations: readonly Observation[]): number[] =>
  [...new Set(observations.map(({ age }) => age))].sort((a, b) => a - b)

const agesQuantile = (observations: readonly Observation[], share: number): number =>
  quantile(sortedAges(observations), share)

const secondAge = (observations: readonly Observation[]): number => sortedAges(observations)[1] ?? 0

const secondLastAge = (observations: readonly Observation[]): number => sortedAges(observations).at(-2) ?? 1
