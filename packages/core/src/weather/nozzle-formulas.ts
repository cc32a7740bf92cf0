import type { Formula, FormulaInput } from '../formula/index.js'
import { of, percent } from './formula-inputs.js'
import { iceForTarget, nozzleTemperature, waterForTarget } from './mix-temperature.js'

const dry: FormulaInput = {
  name: 'dry',
  unit: '°C',
  meaning: 'dry material in the silo',
  least: -10,
  most: 70,
  example: 35,
}
const air: FormulaInput = {
  name: 'air',
  unit: '°C',
  meaning: 'at the hose',
  least: -10,
  most: 50,
  example: 33,
}
const wind: FormulaInput = {
  name: 'wind',
  unit: 'km/h',
  meaning: 'at the hose',
  least: 0,
  most: 18,
  example: 7,
}
const sun: FormulaInput = {
  name: 'sun',
  unit: 'W/m²',
  meaning: 'mean on the hose all round; 0 in the shade',
  least: 0,
  most: 500,
  example: 300,
}
const water: FormulaInput = {
  name: 'water',
  unit: '°C',
  meaning: 'mixing water',
  least: 1,
  most: 40,
  example: 20,
}
const target: FormulaInput = {
  name: 'target',
  unit: '°C',
  meaning: 'wanted at the nozzle',
  least: 5,
  most: 35,
  example: 28,
}
const ratio: FormulaInput = {
  name: 'ratio',
  unit: 'kg/kg',
  meaning: 'water over dry material',
  least: 0.05,
  most: 0.5,
  example: 0.16,
}
const heats: FormulaInput = {
  name: 'heats',
  unit: 'K',
  meaning: 'what mixing and pumping add',
  least: 0,
  most: 15,
  example: 3.5,
}
const supplied: readonly FormulaInput[] = [
  ratio,
  heats,
  { name: 'density', unit: 'kg/m³', meaning: 'of the mix', least: 1000, most: 3000, example: 2150 },
  { name: 'flow', unit: 'L/min', meaning: 'through the hose', least: 0.1, example: 8 },
  { name: 'length', unit: 'm', meaning: 'of the hose', least: 0, example: 25 },
  { name: 'diameter', unit: 'mm', meaning: 'of the hose', least: 5, example: 40 },
]
const caution =
  'A black hose off the ground at a steady flow, 1 to 2 K; measure at the nozzle. Ice has to melt wholly.'
const source = '[ACI305-2010]'

/** How warm the mix comes out, and the water or ice that brings it down. */
export const nozzleFormulas: readonly Formula[] = [
  {
    name: 'nozzle-temperature',
    says: 'Temperature of the mix at the nozzle after mixing, pumping and a hose in air and sun.',
    inputs: [water, dry, air, wind, sun, ...supplied],
    output: { name: 'temperature', unit: '°C' },
    source,
    caution,
    calculate: given => nozzleTemperature(supplyOf(given), hourOf(given), of(given, 'water')),
  },
  {
    name: 'nozzle-water',
    says: 'Temperature of the mixing water that just meets a temperature at the nozzle.',
    inputs: [target, dry, air, wind, sun, ...supplied],
    output: { name: 'water', unit: '°C' },
    source,
    caution: `${caution} Under about 2 °C only ice gets there.`,
    calculate: given => waterForTarget(supplyOf(given), hourOf(given), of(given, 'target')),
  },
  {
    name: 'nozzle-ice',
    says: 'Share of the mixing water to give as ice that just meets a temperature at the nozzle; 0: none needed.',
    inputs: [target, water, dry, air, wind, sun, ...supplied],
    output: { name: 'share', unit: '%' },
    source,
    caution: `${caution} Best below a fifth of the water.`,
    calculate: given =>
      iceForTarget(supplyOf(given), hourOf(given), of(given, 'target'), of(given, 'water')) / percent,
  },
]

type Given = Readonly<Record<string, number>>

const hourOf = (given: Given) => ({
  dry: of(given, 'dry'),
  air: of(given, 'air'),
  wind: of(given, 'wind') / 3.6,
  cylinderSun: of(given, 'sun'),
})

const supplyOf = (given: Given) => ({
  batching: {
    waterTemperature: of(given, 'water'),
    icePerBatchMost: 0,
    mixingHeat: of(given, 'heats'),
    pumpHeat: 0,
    hoseLength: of(given, 'length'),
    hoseDiameter: of(given, 'diameter') / 1000,
    hoseInSun: true,
  },
  mix: { waterRatio: of(given, 'ratio'), density: of(given, 'density') },
  flow: of(given, 'flow') / 60_000,
})
