import type { Seconds } from '../quantity/index.js'
import type { GrowthFamily } from './growth-family.js'
import type { StrengthGrowth } from './mix-model.js'
import type { Observation } from './mix-test.js'
import { strengthAt } from './strength.js'

/** Breaks younger than the start of strength would have no logarithm; a pascal stands in for nothing. */
const value = (growth: StrengthGrowth, age: Seconds) => Math.max(1, strengthAt(growth, age))

const full: GrowthFamily<StrengthGrowth> = {
  kind: 'hyperbola',
  names: ['ultimate', 'rateConstant', 'start'],
  units: ['Pa', '1/s', 's'],
  fewest: 5,
  starts: observations =>
    [0.2, 0.7].map(share => [1.2 * strongest(observations), 0.4 / 86_400, share * youngest(observations)]),
  bounds: observations => ({
    least: [strongest(observations) * 0.5, 1e-8, 0],
    most: [strongest(observations) * 5, 1e-3, 0.98 * youngest(observations)],
  }),
  make: ([ultimate, rateConstant, start]) => ({
    ultimate: ultimate!,
    rateConstant: rateConstant!,
    start: start!,
  }),
  value,
  scale: (growth, share) => ({ ...growth, ultimate: growth.ultimate * share }),
}

/** With the start of strength known from setting, two parameters are left. */
const fromSetting = (start: Seconds): GrowthFamily<StrengthGrowth> => ({
  ...full,
  kind: 'hyperbola from setting',
  names: ['ultimate', 'rateConstant'],
  units: ['Pa', '1/s'],
  fewest: 3,
  starts: observations => [[1.2 * strongest(observations), 0.4 / 86_400]],
  bounds: observations => ({
    least: [strongest(observations) * 0.5, 1e-8],
    most: [strongest(observations) * 5, 1e-3],
  }),
  make: ([ultimate, rateConstant]) => ({ ultimate: ultimate!, rateConstant: rateConstant!, start }),
})

export const strengthFamilies = (start: Seconds): readonly GrowthFamily<StrengthGrowth>[] => [
  fromSetting(start),
  full,
]

const strongest = (observations: readonly Observation[]): number =>
  Math.max(...observations.map(o => o.value))
const youngest = (observations: readonly Observation[]): Seconds =>
  Math.min(...observations.map(({ age }) => age))
