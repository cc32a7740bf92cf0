import type { GrowthFamily } from './growth-family.js'
import type { StiffnessGrowth } from './mix-model.js'
import type { Observation } from './mix-test.js'
import { scaleStiffness, stiffness } from './stiffness.js'

const linear: GrowthFamily<StiffnessGrowth> = {
  kind: 'linear',
  names: ['start', 'rate'],
  units: ['Pa', 'Pa/s'],
  fewest: 3,
  starts: observations => [[lowest(observations), slope(observations)]],
  bounds: () => ({ least: [100, 0], most: [1e9, 1e7] }),
  make: ([start, rate]) => ({ start: start!, rate: rate!, bend: 0 }),
  value: stiffness,
  scale: scaleStiffness,
}

/** Slope at the start and at the oldest test are the parameters: both at least 0, the curve never turns down between them. */
const quadratic: GrowthFamily<StiffnessGrowth> = {
  kind: 'quadratic',
  names: ['start', 'rate', 'rateAtOldest'],
  units: ['Pa', 'Pa/s', 'Pa/s'],
  fewest: 5,
  starts: observations => {
    const rate = slope(observations)
    return [
      [lowest(observations), rate, rate],
      [lowest(observations), rate / 4, rate * 2],
    ]
  },
  bounds: () => ({ least: [100, 0, 0], most: [1e9, 1e7, 1e7] }),
  make: ([start, rate, last], oldest) => ({
    start: start!,
    rate: rate!,
    bend: (last! - rate!) / (2 * oldest),
  }),
  value: stiffness,
  scale: scaleStiffness,
}

export const stiffnessFamilies: readonly GrowthFamily<StiffnessGrowth>[] = [linear, quadratic]

const lowest = (observations: readonly Observation[]): number => Math.min(...observations.map(o => o.value))

function slope(observations: readonly Observation[]): number {
  const ages = observations.map(({ age }) => age)
  const values = observations.map(o => o.value)
  const span = Math.max(...ages) - Math.min(...ages)
  return Math.max(1e-2, (Math.max(...values) - Math.min(...values)) / Math.max(span, 1))
}
