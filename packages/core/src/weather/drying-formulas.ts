import type { Formula } from '../formula/index.js'
import { evaporationMenzel, evaporationPerHour, evaporationUnrounded, windAtHeight } from './evaporation.js'
import { air, concrete, humidity, kmh, of, percent, wind } from './formula-inputs.js'
import { batchTemperature } from './mix-temperature.js'

const guide =
  'Assumes a wet surface and is ±40 % on site [Hover2020]. Printed beads do not bleed: judge by 0.25 to 0.5 kg/m²/h, not by 1.'
const evaporation = (
  name: string,
  says: string,
  source: string,
  rate: typeof evaporationPerHour,
): Formula => ({
  name,
  says,
  inputs: [concrete, air(-5, 50), humidity, wind],
  output: { name: 'evaporation', unit: 'kg/m²/h' },
  source,
  caution: guide,
  calculate: given =>
    rate(
      { air: of(given, 'air'), humidity: of(given, 'humidity') * percent, wind: of(given, 'wind') * kmh },
      of(given, 'concrete'),
    ),
})

/** What `calc` offers about drying and the mix. */
export const dryingFormulas: readonly Formula[] = [
  evaporation(
    'evaporation-uno',
    'Water leaving fresh concrete, the usual metric form.',
    '[Uno1998]',
    evaporationPerHour,
  ),
  evaporation(
    'evaporation-aci',
    'Water leaving fresh concrete, the American form without rounding.',
    '[ACI305-2010]',
    evaporationUnrounded,
  ),
  evaporation(
    'evaporation-menzel',
    'Water leaving fresh concrete, by vapour pressures.',
    '[Menzel1954]',
    evaporationMenzel,
  ),
  {
    name: 'wind-at-height',
    says: 'Wind near the ground from the wind at 10 m: the one-seventh power law.',
    inputs: [
      { ...wind, name: 'wind', meaning: 'wind at 10 m' },
      { name: 'height', unit: 'm', meaning: 'above the ground', least: 0.1, most: 100, example: 0.5 },
    ],
    output: { name: 'wind', unit: 'km/h' },
    source: 'common practice, no source',
    caution: 'Open ground; half to one and a third of it among buildings.',
    calculate: given => windAtHeight(of(given, 'wind'), of(given, 'height')),
  },
  {
    name: 'mix-temperature',
    says: 'Temperature of a fresh batch from what goes in, ice included.',
    inputs: [
      { name: 'aggregate', unit: 'kg', meaning: 'mass of aggregate', least: 0, example: 1800 },
      { name: 'aggregateTemperature', unit: '°C', meaning: 'of the aggregate', example: 35 },
      { name: 'binder', unit: 'kg', meaning: 'mass of cement and fines', least: 0, example: 500 },
      { name: 'binderTemperature', unit: '°C', meaning: 'of the binder', example: 60 },
      { name: 'water', unit: 'kg', meaning: 'mixing water without ice', least: 0, example: 180 },
      {
        name: 'waterTemperature',
        unit: '°C',
        meaning: 'of the mixing water',
        least: 0,
        most: 100,
        example: 5,
      },
      { name: 'moisture', unit: 'kg', meaning: 'free water on the aggregate', least: 0, example: 40 },
      { name: 'ice', unit: 'kg', meaning: 'ice in place of water', least: 0, example: 0 },
    ],
    output: { name: 'temperature', unit: '°C' },
    source: '[ACI305-2010]',
    caution:
      'All ice must melt: best below a fifth of the mixing water. Mixing and pumping warm the mix by some kelvin more.',
    calculate: given =>
      batchTemperature({
        aggregate: [of(given, 'aggregate'), of(given, 'aggregateTemperature')],
        binder: [of(given, 'binder'), of(given, 'binderTemperature')],
        water: [of(given, 'water'), of(given, 'waterTemperature')],
        moisture: [of(given, 'moisture'), of(given, 'aggregateTemperature')],
        ice: of(given, 'ice'),
      }),
  },
]
