import type { Formula, FormulaInput } from '../formula/index.js'
import { binghamFlow, binghamPressure, wallStress } from './bingham-pipe.js'
import { aggregateMost, residenceTime, risePressure, stoppedHoseTemperature } from './hose.js'
import { lubricatedPressure } from './lubricated-pipe.js'

const length: FormulaInput = { name: 'length', unit: 'm', meaning: 'of the hose', least: 0.1, example: 20 }
const diameter: FormulaInput = {
  name: 'diameter',
  unit: 'mm',
  meaning: 'inside of the hose',
  least: 5,
  example: 50,
}
const flow: FormulaInput = {
  name: 'flow',
  unit: 'L/min',
  meaning: 'through the hose',
  least: 1e-3,
  example: 10,
}
const yielding: FormulaInput = {
  name: 'yield',
  unit: 'Pa',
  meaning: 'yield stress of the mix in motion',
  least: 0,
  example: 300,
}
const viscosity: FormulaInput = {
  name: 'viscosity',
  unit: 'Pa·s',
  meaning: 'plastic viscosity',
  least: 1e-3,
  example: 20,
}
const caution = 'Add the rise, about 0.2 bar a metre. Release pressure before opening a hose.'

/** What `calc` offers about pump and hose. */
export const formulas: readonly Formula[] = [
  {
    name: 'hose-flow-bingham',
    says: 'Flow through a hose that shears the whole mix.',
    inputs: [
      { name: 'pressure', unit: 'bar', meaning: 'drop along the hose', least: 0, example: 10 },
      length,
      diameter,
      yielding,
      viscosity,
    ],
    output: { name: 'flow', unit: 'L/min' },
    source: '[Buckingham1921]',
    caution,
    calculate: given => binghamFlow(hoseOf(given), mixOf(given), of(given, 'pressure') * 1e5) * 60_000,
  },
  {
    name: 'hose-pressure-bingham',
    says: 'Pressure that drives a flow through a hose when the whole mix shears: an upper bound.',
    inputs: [flow, length, diameter, yielding, viscosity],
    output: { name: 'pressure', unit: 'bar' },
    source: '[Buckingham1921]',
    caution,
    calculate: given => binghamPressure(hoseOf(given), mixOf(given), of(given, 'flow') / 60_000) / 1e5,
  },
  {
    name: 'hose-pressure-slip',
    says: 'Pressure that drives a flow through a hose when the mix slips on a layer of paste.',
    inputs: [
      flow,
      length,
      diameter,
      yielding,
      viscosity,
      { name: 'slipYield', unit: 'Pa', meaning: 'yield stress of the layer', least: 0, example: 100 },
      {
        name: 'slipViscosity',
        unit: 'Pa·s/m',
        meaning: 'viscous constant of the layer',
        least: 0,
        example: 500,
      },
    ],
    output: { name: 'pressure', unit: 'bar' },
    source: '[Kaplan2000]',
    caution,
    calculate: given =>
      lubricatedPressure(
        hoseOf(given),
        { yield: of(given, 'slipYield'), viscosity: of(given, 'slipViscosity') },
        mixOf(given),
        of(given, 'flow') / 60_000,
      ) / 1e5,
  },
  {
    name: 'hose-residence',
    says: 'Time the mix spends in the hose.',
    inputs: [flow, length, diameter],
    output: { name: 'time', unit: 'min' },
    source: 'closed form',
    calculate: given => residenceTime(hoseOf(given), of(given, 'flow') / 60_000) / 60,
  },
  {
    name: 'hose-aggregate',
    says: 'Largest angular aggregate a hose may carry.',
    inputs: [diameter],
    output: { name: 'aggregate', unit: 'mm' },
    source: '[ACI304-2R]',
    calculate: given => aggregateMost(of(given, 'diameter') / 1000, 'angular') * 1000,
  },
  {
    name: 'hose-aggregate-rounded',
    says: 'Largest well-rounded aggregate a hose may carry.',
    inputs: [diameter],
    output: { name: 'aggregate', unit: 'mm' },
    source: '[ACI304-2R]',
    caution: 'A rotor-stator pump wears on more than about 8 mm: common practice, no source.',
    calculate: given => aggregateMost(of(given, 'diameter') / 1000, 'rounded') * 1000,
  },
  {
    name: 'hose-rise',
    says: 'Pressure that lifts the mix to the nozzle.',
    inputs: [
      { name: 'density', unit: 'kg/m³', meaning: 'of the mix', least: 1000, most: 3000, example: 2300 },
      { name: 'rise', unit: 'm', meaning: 'from pump to nozzle', example: 3 },
    ],
    output: { name: 'pressure', unit: 'bar' },
    source: 'closed form',
    calculate: given => risePressure(of(given, 'density'), of(given, 'rise')) / 1e5,
  },
  {
    name: 'hose-wall-stress',
    says: 'Shear stress at the wall of a hose; the whole mix shears where it is over the yield stress.',
    inputs: [
      { name: 'pressure', unit: 'bar', meaning: 'drop along the hose', least: 0, example: 10 },
      length,
      diameter,
    ],
    output: { name: 'stress', unit: 'Pa' },
    source: 'closed form',
    calculate: given => wallStress(hoseOf(given), of(given, 'pressure') * 1e5),
  },
  {
    name: 'hose-stopped',
    says: 'Temperature of the mix in a hose after the pump has stood still.',
    inputs: [
      { name: 'before', unit: '°C', meaning: 'mix when it stopped', example: 25 },
      { name: 'end', unit: '°C', meaning: 'that the hose tends to in air and sun', example: 50 },
      { name: 'stopped', unit: 'min', meaning: 'since', least: 0, example: 20 },
      diameter,
      {
        name: 'conductance',
        unit: 'W/m²K',
        meaning: 'through the hose wall',
        least: 1,
        most: 30,
        example: 10,
      },
      { name: 'density', unit: 'kg/m³', meaning: 'of the mix', least: 1000, most: 3000, example: 2150 },
      { name: 'specificHeat', unit: 'kJ/kgK', meaning: 'of the mix', least: 0.8, most: 1.6, example: 1.1 },
    ],
    output: { name: 'temperature', unit: '°C' },
    source: 'closed form',
    caution:
      'One temperature across the hose, without heat of hydration. Release pressure before opening a hose.',
    calculate: given =>
      stoppedHoseTemperature(
        {
          diameter: of(given, 'diameter') / 1000,
          end: of(given, 'end'),
          conductance: of(given, 'conductance'),
          density: of(given, 'density'),
          specificHeat: of(given, 'specificHeat') * 1000,
        },
        of(given, 'before'),
        of(given, 'stopped') * 60,
      ),
  },
]

type Given = Readonly<Record<string, number>>
const of = (given: Given, name: string): number => given[name] ?? Number.NaN
const hoseOf = (given: Given) => ({ length: of(given, 'length'), diameter: of(given, 'diameter') / 1000 })
const mixOf = (given: Given) => ({ yield: of(given, 'yield'), viscosity: of(given, 'viscosity') })
