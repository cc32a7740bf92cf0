import type { Formula, FormulaInput } from '../formula/index.js'
import { ageFactor } from './equivalent-age.js'
import { spreadYieldStress } from './spread.js'
import { stiffness } from './stiffness.js'
import { strengthAt } from './strength.js'
import { ageAtYield, yieldStress } from './yield-stress.js'

const age: FormulaInput = {
  name: 'age',
  unit: 'min',
  meaning: 'equivalent age at the reference temperature',
  least: 0,
  example: 60,
}
const start: FormulaInput = {
  name: 'start',
  unit: 'Pa',
  meaning: 'yield stress at the nozzle',
  least: 0,
  example: 1000,
}
const rate: FormulaInput = {
  name: 'rate',
  unit: 'Pa/s',
  meaning: 'structuration rate',
  least: 0,
  example: 0.5,
}
const tested = 'Holds only for the ages and temperatures the mix was tested at.'

/** What `calc` offers about the mix. */
export const formulas: readonly Formula[] = [
  {
    name: 'yield-stress-linear',
    says: 'Static yield stress of resting mortar that grows steadily.',
    inputs: [start, rate, age],
    output: { name: 'yield stress', unit: 'Pa' },
    source: '[Roussel2006]',
    caution: tested,
    calculate: given =>
      yieldStress(
        { kind: 'linear', start: of(given, 'start'), rate: of(given, 'rate') },
        of(given, 'age') * 60,
      ),
  },
  {
    name: 'yield-stress-exponential',
    says: 'Static yield stress of resting mortar whose growth quickens as it sets.',
    inputs: [
      start,
      rate,
      { name: 'time', unit: 'min', meaning: 'time in which the rate grows e-fold', least: 1e-3, example: 60 },
      age,
    ],
    output: { name: 'yield stress', unit: 'Pa' },
    source: '[Perrot2015]',
    caution: tested,
    calculate: given =>
      yieldStress(
        {
          kind: 'exponential',
          start: of(given, 'start'),
          rate: of(given, 'rate'),
          time: of(given, 'time') * 60,
        },
        of(given, 'age') * 60,
      ),
  },
  {
    name: 'yield-stress-bilinear',
    says: 'Static yield stress of mortar that re-flocculates fast and then structurates steadily.',
    inputs: [
      start,
      { name: 'early', unit: 'Pa/s', meaning: 'rate up to the knee', least: 0, example: 6 },
      { name: 'knee', unit: 'min', meaning: 'age at which the rate changes', least: 0, example: 3 },
      { name: 'late', unit: 'Pa/s', meaning: 'rate after the knee', least: 0, example: 0.6 },
      age,
    ],
    output: { name: 'yield stress', unit: 'Pa' },
    source: '[Kruger2019]',
    caution: tested,
    calculate: given =>
      yieldStress(
        {
          kind: 'bilinear',
          start: of(given, 'start'),
          earlyRate: of(given, 'early'),
          kneeAge: of(given, 'knee') * 60,
          lateRate: of(given, 'late'),
        },
        of(given, 'age') * 60,
      ),
  },
  {
    name: 'age-at-yield',
    says: 'Age at which steady growth reaches a yield stress, such as the earliest clean cut; ∞: never.',
    inputs: [
      start,
      rate,
      { name: 'wanted', unit: 'Pa', meaning: 'yield stress asked for', least: 0, example: 2800 },
    ],
    output: { name: 'age', unit: 'min' },
    source: '[Roussel2006]',
    caution: `${tested} When a wall can be cut is for the site's own cut trials to say.`,
    calculate: given =>
      (ageAtYield(
        { kind: 'linear', start: of(given, 'start'), rate: of(given, 'rate') },
        of(given, 'wanted'),
      ) ?? Number.POSITIVE_INFINITY) / 60,
  },
  {
    name: 'green-stiffness',
    says: 'Young’s modulus of the green material at an age.',
    inputs: [
      { name: 'start', unit: 'kPa', meaning: 'modulus at the nozzle', least: 0, example: 78.1 },
      { name: 'rate', unit: 'kPa/min', meaning: 'growth of the modulus', least: 0, example: 1.2 },
      age,
    ],
    output: { name: 'modulus', unit: 'kPa' },
    source: '[Wolfs2018]',
    caution: tested,
    calculate: given =>
      stiffness({ start: of(given, 'start'), rate: of(given, 'rate') / 60, bend: 0 }, of(given, 'age') * 60),
  },
  {
    name: 'age-factor',
    says: 'How much faster a mix ages than at its reference temperature.',
    inputs: [
      { name: 'temperature', unit: '°C', meaning: 'of the material', least: 0, most: 40, example: 30 },
      { name: 'reference', unit: '°C', meaning: 'reference temperature', least: 15, most: 25, example: 20 },
      {
        name: 'activation',
        unit: 'K',
        meaning: 'activation energy over the gas constant',
        least: 2000,
        most: 8000,
        example: 5000,
      },
    ],
    output: { name: 'factor', unit: '' },
    source: '[FreieslebenHansen1977]',
    caution: 'Keep the reference temperature that belongs to the activation; 20 and 23 °C differ by 16 %.',
    calculate: given =>
      ageFactor(of(given, 'temperature'), {
        activation: of(given, 'activation'),
        reference: of(given, 'reference'),
      }),
  },
  {
    name: 'strength-hyperbola',
    says: 'Compressive strength at an equivalent age.',
    inputs: [
      { name: 'ultimate', unit: 'MPa', meaning: 'strength in the end', least: 0, example: 40 },
      {
        name: 'rate',
        unit: '1/d',
        meaning: 'rate constant at the reference temperature',
        least: 0,
        example: 0.5,
      },
      { name: 'start', unit: 'd', meaning: 'age at which strength begins', least: 0, example: 0.3 },
      { name: 'age', unit: 'd', meaning: 'equivalent age', least: 0, example: 7 },
    ],
    output: { name: 'strength', unit: 'MPa' },
    source: '[Carino1984]',
    caution: 'A hot first day lowers the ultimate strength, which maturity does not know.',
    calculate: given =>
      strengthAt(
        {
          ultimate: of(given, 'ultimate') * 1e6,
          rateConstant: of(given, 'rate') / 86_400,
          start: of(given, 'start') * 86_400,
        },
        of(given, 'age') * 86_400,
      ) / 1e6,
  },
  {
    name: 'spread-yield-stress',
    says: 'Yield stress from the spread of a known volume on a flat plate.',
    inputs: [
      { name: 'diameter', unit: 'mm', meaning: 'mean diameter of the pat', least: 1, example: 200 },
      { name: 'volume', unit: 'mL', meaning: 'volume of the cone', least: 1, example: 274 },
      { name: 'density', unit: 'kg/m³', meaning: 'of the fresh mix', least: 1000, most: 3000, example: 2000 },
    ],
    output: { name: 'yield stress', unit: 'Pa' },
    source: '[RousselCoussot2005]',
    caution: 'For thin pats only: height well below radius.',
    calculate: given =>
      spreadYieldStress(of(given, 'diameter') / 1000, of(given, 'volume') * 1e-6, of(given, 'density')),
  },
]

const of = (given: Readonly<Record<string, number>>, name: string): number => given[name] ?? Number.NaN
