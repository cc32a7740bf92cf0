import type { Formula } from '../formula/index.js'
import { hoseVolume, splitMix } from './hose.js'

/** Formulas of this domain for the registry. */
export const formulas: readonly Formula[] = [
  {
    name: 'hose-volume',
    says: 'What the hose holds: filled before the first bead, washed out after the last.',
    inputs: [
      { name: 'diameter', unit: 'mm', meaning: 'inner diameter', least: 0, most: 200, example: 35 },
      { name: 'length', unit: 'm', meaning: 'hose length', least: 0, most: 200, example: 30 },
    ],
    output: { name: 'volume', unit: 'L' },
    source: 'closed form (cylinder)',
    calculate: ({ diameter = Number.NaN, length = Number.NaN }) => hoseVolume(diameter / 1000, length) * 1000,
  },
  {
    name: 'dry-material',
    says: 'Dry material in a mass of wet mix.',
    inputs: [
      { name: 'mass', unit: 'kg', meaning: 'wet mix', least: 0, example: 2100 },
      {
        name: 'ratio',
        unit: 'kg/kg',
        meaning: 'water per kg of dry material',
        least: 0,
        most: 1,
        example: 0.16,
      },
    ],
    output: { name: 'dry', unit: 'kg' },
    source: 'mass balance',
    caution: 'Water lost on the way, and admixtures added at the nozzle, are not in it.',
    calculate: ({ mass = Number.NaN, ratio = Number.NaN }) => splitMix(mass, ratio).dry,
  },
]
