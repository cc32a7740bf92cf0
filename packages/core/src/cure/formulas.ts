import type { Formula, FormulaInput } from '../formula/index.js'
import { cementHeat } from './cement.js'
import { leastKept } from './frost.js'
import { adiabaticRise, hydrated, ultimateHydration } from './hydration.js'
import { ageFactorDanish, ageFactorEurocode } from './maturity.js'
import { strengthShareAci, strengthShareEurocode } from './strength-curves.js'
import { windFilm } from './wall-weather.js'

const percent = 0.01
const day = 86400

const temperature: FormulaInput = {
  name: 'temperature',
  unit: '°C',
  meaning: 'of the concrete',
  least: -10,
  most: 80,
  example: 30,
}
const age: FormulaInput = {
  name: 'age',
  unit: 'd',
  meaning: 'age at 20 °C',
  least: 0.5,
  most: 365,
  example: 7,
}
const early =
  'From the age at one temperature: hot early curing lowers the late strength. Confirm with cylinders cured beside the wall.'

const compound = (name: string, meaning: string, example: number): FormulaInput => ({
  name,
  unit: '%',
  meaning: `${meaning} in the cement`,
  least: 0,
  most: 100,
  example,
})

/** What `calc` offers about curing. */
export const formulas: readonly Formula[] = [
  {
    name: 'age-factor-danish',
    says: 'How much faster concrete ages than at 20 °C, with an activation that rises in the cold.',
    inputs: [temperature],
    output: { name: 'factor', unit: '' },
    source: '[FreieslebenHansen1977]',
    calculate: given => ageFactorDanish(of(given, 'temperature')),
  },
  {
    name: 'age-factor-eurocode',
    says: 'How much faster concrete ages than at 20 °C, by the European code.',
    inputs: [temperature],
    output: { name: 'factor', unit: '' },
    source: '[EN1992-1]',
    calculate: given => ageFactorEurocode(of(given, 'temperature')),
  },
  {
    name: 'strength-share-aci',
    says: 'Share of the 28-day strength of moist-cured Type I concrete.',
    inputs: [age],
    output: { name: 'share', unit: '%' },
    source: '[ACI209-1992]',
    caution: early,
    calculate: given => strengthShareAci(of(given, 'age') * day) / percent,
  },
  {
    name: 'strength-share-eurocode',
    says: 'Share of the mean 28-day strength by the class of cement.',
    inputs: [
      { ...age, least: 3 },
      {
        name: 's',
        unit: '',
        meaning: '0.20 rapid, 0.25 normal, 0.38 slow cement',
        least: 0.2,
        most: 0.38,
        example: 0.25,
      },
    ],
    output: { name: 'share', unit: '%' },
    source: '[EN1992-1]',
    caution: early,
    calculate: given => strengthShareEurocode(of(given, 'age') * day, of(given, 's')) / percent,
  },
  {
    name: 'hydration-end',
    says: 'Share of the binder that hydrates in the end.',
    inputs: [
      { name: 'ratio', unit: '', meaning: 'water over binder', least: 0.25, most: 0.7, example: 0.45 },
    ],
    output: { name: 'share', unit: '%' },
    source: '[Mills1966]',
    calculate: given => ultimateHydration(of(given, 'ratio')) / percent,
  },
  {
    name: 'hydration',
    says: 'Share of the binder hydrated at an equivalent age.',
    inputs: [
      { name: 'end', unit: '%', meaning: 'share hydrated in the end', least: 10, most: 100, example: 85 },
      {
        name: 'time',
        unit: 'h',
        meaning: 'age at which 1/e of that is reached',
        least: 2,
        most: 100,
        example: 13.69,
      },
      { name: 'slope', unit: '', meaning: 'steepness of the curve', least: 0.3, most: 2, example: 0.905 },
      { name: 'age', unit: 'h', meaning: 'equivalent age', least: 0, example: 24 },
    ],
    output: { name: 'share', unit: '%' },
    source: '[SchindlerFolliard2005]',
    calculate: given =>
      hydrated(
        {
          ultimate: of(given, 'end') * percent,
          time: of(given, 'time') * 3600,
          slope: of(given, 'slope'),
        },
        of(given, 'age') * 3600,
      ) / percent,
  },
  {
    name: 'cement-heat',
    says: 'Heat of hydration of a cement from its compounds.',
    inputs: [
      compound('c3s', 'tricalcium silicate', 55),
      compound('c2s', 'dicalcium silicate', 18),
      compound('c3a', 'tricalcium aluminate', 10),
      compound('c4af', 'tetracalcium aluminoferrite', 8),
      compound('sulphate', 'SO3', 3),
      compound('freeLime', 'free CaO', 1),
      compound('magnesia', 'MgO', 2),
    ],
    output: { name: 'heat', unit: 'kJ/kg' },
    source: '[SchindlerFolliard2005]',
    calculate: given => {
      const share = (name: string) => of(given, name) * percent
      return (
        cementHeat({
          c3s: share('c3s'),
          c2s: share('c2s'),
          c3a: share('c3a'),
          c4af: share('c4af'),
          sulphate: share('sulphate'),
          freeLime: share('freeLime'),
          magnesia: share('magnesia'),
          fineness: 350,
        }) / 1000
      )
    },
  },
  {
    name: 'adiabatic-rise',
    says: 'Warming of a mix that loses no heat.',
    inputs: [
      { name: 'binder', unit: 'kg/m³', meaning: 'binder in the mix', least: 100, most: 1200, example: 500 },
      {
        name: 'heat',
        unit: 'kJ/kg',
        meaning: 'heat of hydration of the binder',
        least: 100,
        most: 600,
        example: 470,
      },
      { name: 'share', unit: '%', meaning: 'share hydrated', least: 0, most: 100, example: 75 },
      { name: 'density', unit: 'kg/m³', meaning: 'of the mix', least: 500, most: 3000, example: 2200 },
      { name: 'specificHeat', unit: 'kJ/kgK', meaning: 'of the mix', least: 0.7, most: 1.6, example: 1 },
    ],
    output: { name: 'rise', unit: 'K' },
    source: 'closed form',
    caution: 'A printed bead loses most of it: see the wall’s own heat.',
    calculate: given =>
      adiabaticRise(
        of(given, 'binder') * of(given, 'heat') * 1000,
        of(given, 'share') * percent,
        of(given, 'density') * of(given, 'specificHeat') * 1000,
      ),
  },
  {
    name: 'wind-film',
    says: 'Heat that wind carries from a face for one kelvin, without radiation.',
    inputs: [{ name: 'wind', unit: 'm/s', meaning: 'at the face', least: 0, most: 10, example: 3 }],
    output: { name: 'film', unit: 'W/m²K' },
    source: '[Watmuff1977]',
    calculate: given => windFilm(of(given, 'wind')),
  },
  {
    name: 'cold-least-kept',
    says: 'Least temperature to keep a section at while it is protected from frost.',
    inputs: [
      { name: 'thickness', unit: 'm', meaning: 'of the section', least: 0.02, most: 5, example: 0.25 },
    ],
    output: { name: 'temperature', unit: '°C' },
    source: '[ACI306-2016]',
    caution: 'Keep it until 3.5 MPa at least; the licensed engineer decides.',
    calculate: given => leastKept(of(given, 'thickness')),
  },
]

const of = (given: Readonly<Record<string, number>>, name: string): number => given[name] ?? Number.NaN
