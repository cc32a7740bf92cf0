import type { Formula } from '../formula/index.js'
import { dryingRest } from './drying-rest.js'
import { intermixingRest } from './intermixing.js'

/** What `calc` offers about bond. */
export const formulas: readonly Formula[] = [
  {
    name: 'intermixing-rest',
    says: 'Longest rest after which a fresh layer still mixes with the one below it.',
    inputs: [
      { name: 'density', unit: 'kg/m³', meaning: 'of the fresh mix', least: 1000, most: 3000, example: 2300 },
      { name: 'height', unit: 'mm', meaning: 'of the fresh layer', least: 1, example: 20 },
      { name: 'speed', unit: 'mm/s', meaning: 'of the nozzle', least: 0, example: 100 },
      { name: 'viscosity', unit: 'Pa·s', meaning: 'plastic viscosity', least: 0, example: 20 },
      {
        name: 'structuration',
        unit: 'Pa/s',
        meaning: 'growth rate of the yield stress',
        least: 1e-6,
        example: 1,
      },
    ],
    output: { name: 'rest', unit: 's' },
    source: '[RousselCussigh2008]',
    caution: 'An index: calibrate with bond tests. Drying of the surface usually governs on site.',
    calculate: given =>
      intermixingRest({
        density: of(given, 'density'),
        layerHeight: of(given, 'height') / 1000,
        speed: of(given, 'speed') / 1000,
        plasticViscosity: of(given, 'viscosity'),
        structuration: of(given, 'structuration'),
      }),
  },
  {
    name: 'drying-rest',
    says: 'Rest after which a bare layer has lost the water its bond can spare; ∞: it does not dry.',
    inputs: [
      { name: 'spare', unit: 'kg/m²', meaning: 'by your own bond test', least: 0, most: 2, example: 0.25 },
      { name: 'evaporation', unit: 'kg/m²/h', meaning: 'by an evaporation formula', least: 0, example: 0.5 },
    ],
    output: { name: 'rest', unit: 'min' },
    source: 'mass balance',
    caution: 'What a bond can spare differs from mix to mix: test it. The weather is taken to stay as it is.',
    calculate: given => dryingRest(of(given, 'spare'), of(given, 'evaporation')) / 60,
  },
]

const of = (given: Readonly<Record<string, number>>, name: string): number => given[name] ?? Number.NaN
