import type { Formula } from '../formula/index.js'
import { layersByRule } from './campaign-input.js'
import { chanceInterval } from './confidence.js'

const chance = (end: 0 | 1): Formula['calculate'] => {
  return inputs => 100 * chanceInterval(Math.round(inputs.hits ?? 0), Math.round(inputs.replays ?? 1))[end]
}

const inputs: Formula['inputs'] = [
  { name: 'hits', unit: '', meaning: 'replays up by the date', least: 0, example: 81 },
  { name: 'replays', unit: '', meaning: 'replays in all', least: 1, example: 263 },
]

export const formulas: readonly Formula[] = [
  {
    name: 'finish-chance-low',
    says: 'Lower end of the 95 % interval of the chance of finishing by a date, from replays.',
    inputs,
    output: { name: 'chance', unit: '%' },
    source: '[Wilson1927]',
    caution: 'Replays of few weather years are not independent; the true doubt is larger.',
    calculate: chance(0),
  },
  {
    name: 'finish-chance-high',
    says: 'Upper end of the 95 % interval of the chance of finishing by a date, from replays.',
    inputs,
    output: { name: 'chance', unit: '%' },
    source: '[Wilson1927]',
    caution: 'Replays of few weather years are not independent; the true doubt is larger.',
    calculate: chance(1),
  },
  {
    name: 'lift-layers',
    says: 'Layers a lift may have by the height rule.',
    inputs: [
      { name: 'liftHeight', unit: 'm', meaning: 'tallest lift by rule', least: 0, example: 1 },
      { name: 'layerHeight', unit: 'mm', meaning: 'height of one layer', least: 1, example: 20 },
    ],
    output: { name: 'layers', unit: '' },
    source: 'closed form',
    caution: 'Standing, weather or bond may end the lift sooner.',
    calculate: ({ liftHeight = 0, layerHeight = 1 }) => layersByRule(liftHeight, layerHeight / 1000),
  },
]
