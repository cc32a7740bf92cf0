import type { Formula, FormulaInput } from '../formula/index.js'
import {
  columnPressure,
  columnRateFor,
  headPressure,
  wallPressure,
  weightFactor,
} from './lateral-pressure.js'
import { hoopTension, plainTension, ruptureModulus, stripTension } from './shell-strength.js'

const density: FormulaInput = {
  name: 'density',
  unit: 'kg/m³',
  meaning: 'of the fill',
  least: 1000,
  most: 3000,
  example: 2300,
}
const height: FormulaInput = { name: 'height', unit: 'm', meaning: 'of fresh fill', least: 0, example: 3 }
const rate: FormulaInput = {
  name: 'rate',
  unit: 'm/h',
  meaning: 'rise of the fill',
  least: 0,
  most: 4.5,
  example: 1.5,
}
const temperature: FormulaInput = {
  name: 'temperature',
  unit: '°C',
  meaning: 'of the fill',
  least: 5,
  most: 35,
  example: 20,
}
const pressure: FormulaInput = {
  name: 'pressure',
  unit: 'kPa',
  meaning: 'of the fresh fill',
  least: 0,
  example: 20,
}
const thickness: FormulaInput = {
  name: 'thickness',
  unit: 'mm',
  meaning: 'of the shell',
  least: 1,
  example: 50,
}
const strength: FormulaInput = {
  name: 'strength',
  unit: 'MPa',
  meaning: 'compressive strength at that age',
  least: 0,
  example: 20,
}
const screening = 'A screening value for a licensed engineer. Flowing fills press with their full head.'

/** What `calc` offers about pours. Portland cement without retarder; `planPour` knows the others. */
export const formulas: readonly Formula[] = [
  {
    name: 'pour-head',
    says: 'Lateral pressure of a flowing fill: its full head.',
    inputs: [density, height],
    output: { name: 'pressure', unit: 'kPa' },
    source: 'closed form',
    calculate: given => headPressure(of(given, 'density'), of(given, 'height')) / 1000,
  },
  {
    name: 'pour-column',
    says: 'Lateral pressure of a vibrated fill in a column.',
    inputs: [density, height, rate, temperature],
    output: { name: 'pressure', unit: 'kPa' },
    source: '[ACI347-04]',
    caution: screening,
    calculate: given => columnPressure(fillOf(given)) / 1000,
  },
  {
    name: 'pour-wall',
    says: 'Lateral pressure of a vibrated fill in a wall.',
    inputs: [density, height, rate, temperature],
    output: { name: 'pressure', unit: 'kPa' },
    source: '[ACI347-04]',
    caution: screening,
    calculate: given => wallPressure(fillOf(given)) / 1000,
  },
  {
    name: 'pour-column-rate',
    says: 'Fastest rise of a vibrated fill in a column that keeps under a pressure; none where even 30 kPa is too much.',
    inputs: [{ ...pressure, meaning: 'that the shell bears', example: 40 }, density, temperature],
    output: { name: 'rate', unit: 'm/h' },
    source: '[ACI347-04]',
    caution: screening,
    calculate: given =>
      (columnRateFor(of(given, 'pressure') * 1000, {
        density: of(given, 'density'),
        chemistry: 'portland',
        temperature: of(given, 'temperature'),
      }) ?? Number.NaN) * 3600,
  },
  {
    name: 'pour-weight-factor',
    says: 'Factor on the pressure of light and heavy fills.',
    inputs: [density],
    output: { name: 'factor', unit: '' },
    source: '[ACI347-04]',
    caution: screening,
    calculate: given => weightFactor(of(given, 'density')),
  },
  {
    name: 'shell-strip',
    says: 'Tension in a flat side of a printed shell between two ties, simply supported.',
    inputs: [
      pressure,
      { name: 'span', unit: 'mm', meaning: 'clear between ties', least: 0, example: 250 },
      thickness,
    ],
    output: { name: 'tension', unit: 'MPa' },
    source: 'closed form',
    caution: screening,
    calculate: given =>
      stripTension(
        of(given, 'pressure') * 1000,
        of(given, 'span') / 1000,
        of(given, 'thickness') / 1000,
        'supported',
      ) / 1e6,
  },
  {
    name: 'shell-hoop',
    says: 'Hoop tension in a round printed shell.',
    inputs: [
      pressure,
      { name: 'radius', unit: 'mm', meaning: 'mean radius', least: 1, example: 150 },
      thickness,
    ],
    output: { name: 'tension', unit: 'MPa' },
    source: 'closed form',
    caution: screening,
    calculate: given =>
      hoopTension(of(given, 'pressure') * 1000, of(given, 'radius') / 1000, of(given, 'thickness') / 1000) /
      1e6,
  },
  {
    name: 'rupture-modulus',
    says: 'Tension at which concrete of a strength cracks in bending, on average.',
    inputs: [strength],
    output: { name: 'tension', unit: 'MPa' },
    source: '[ACI318-19]',
    caution: screening,
    calculate: given => ruptureModulus(of(given, 'strength') * 1e6) / 1e6,
  },
  {
    name: 'plain-tension',
    says: 'Design tension of plain concrete in bending.',
    inputs: [strength],
    output: { name: 'tension', unit: 'MPa' },
    source: '[ACI318-19]',
    caution: screening,
    calculate: given => plainTension(of(given, 'strength') * 1e6) / 1e6,
  },
]

type Given = Readonly<Record<string, number>>
const of = (given: Given, name: string): number => given[name] ?? Number.NaN
const fillOf = (given: Given) => ({
  density: of(given, 'density'),
  chemistry: 'portland' as const,
  temperature: of(given, 'temperature'),
  rate: of(given, 'rate') / 3600,
  height: of(given, 'height'),
})
