import type { Formula, FormulaInput } from '../formula/index.js'
import { airMass, cloudTransmission, haurwitzGlobal, skyTemperature } from './clear-sky.js'
import { wbgtLimit, windChill } from './crew-heat.js'
import {
  evaporationMenzel,
  evaporationPerHour,
  evaporationRange,
  evaporationUnrounded,
  windAtHeight,
} from './evaporation.js'
import { heatIndex, wbgtFromAir } from './heat-stress.js'
import { batchTemperature } from './mix-temperature.js'
import { dewPoint, saturationPressure, standardPressure, wetBulb, wetBulbQuick } from './psychrometrics.js'
import { solAir } from './sol-air.js'

const percent = 0.01
const kmh = 1 / 3.6
const degree = Math.PI / 180

const air = (least = -40, most = 60): FormulaInput => ({
  name: 'air',
  unit: '°C',
  meaning: 'air temperature',
  least,
  most,
  example: 30,
})
const humidity: FormulaInput = {
  name: 'humidity',
  unit: '%',
  meaning: 'relative humidity',
  least: 0,
  most: 100,
  example: 50,
}
const concrete: FormulaInput = {
  name: 'concrete',
  unit: '°C',
  meaning: 'temperature of the concrete surface',
  least: evaporationRange.concrete[0],
  most: evaporationRange.concrete[1],
  example: 30,
}
const wind: FormulaInput = {
  name: 'wind',
  unit: 'km/h',
  meaning: 'wind 0.5 m above the surface; two thirds of the wind at 10 m',
  least: 0,
  most: evaporationRange.wind[1] * 3.6,
  example: 20,
}
const pressure: FormulaInput = {
  name: 'pressure',
  unit: 'kPa',
  meaning: 'air pressure at the site',
  least: 50,
  most: 110,
  example: 101.325,
}
const altitude: FormulaInput = {
  name: 'altitude',
  unit: '°',
  meaning: 'height of the sun above the horizon',
  least: 0,
  most: 90,
  example: 30,
}
const guide =
  'Assumes a wet surface and is ±40 % on site [Hover2020]. Printed beads do not bleed: judge by 0.25 to 0.5 kg/m²/h, not by 1.'
const crew = 'A screening value: local rules and the site’s heat plan govern.'

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

/** What `calc` offers about air, sun, drying and the crew. */
export const formulas: readonly Formula[] = [
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
    name: 'saturation-pressure',
    says: 'Vapour pressure of saturated air, over ice below 0 °C.',
    inputs: [air(-100, 200)],
    output: { name: 'pressure', unit: 'Pa' },
    source: '[ASHRAE2017]',
    calculate: given => saturationPressure(of(given, 'air')),
  },
  {
    name: 'dew-point',
    says: 'Temperature at which the vapour in the air begins to condense.',
    inputs: [air(), { ...humidity, least: 0.01 }],
    output: { name: 'dew point', unit: '°C' },
    source: '[ASHRAE2017]',
    calculate: given => dewPoint(of(given, 'air'), of(given, 'humidity') * percent),
  },
  {
    name: 'wet-bulb',
    says: 'Wet-bulb temperature: where wet burlap in the shade tends to.',
    inputs: [air(), humidity, pressure],
    output: { name: 'wet bulb', unit: '°C' },
    source: '[ASHRAE2017]',
    calculate: given =>
      wetBulb(of(given, 'air'), of(given, 'humidity') * percent, of(given, 'pressure') * 1000),
  },
  {
    name: 'wet-bulb-quick',
    says: 'Wet-bulb temperature by an empirical fit, near sea level.',
    inputs: [air(-20, 50), { ...humidity, least: 5, most: 99 }],
    output: { name: 'wet bulb', unit: '°C' },
    source: '[Stull2011]',
    caution: 'Off by −1 to +0.65 K.',
    calculate: given => wetBulbQuick(of(given, 'air'), of(given, 'humidity') * percent),
  },
  {
    name: 'sol-air',
    says: 'Air temperature that would heat an upright surface as air and sun together do.',
    inputs: [
      air(),
      {
        name: 'absorbed',
        unit: '%',
        meaning: 'share of the sun the surface keeps',
        least: 0,
        most: 100,
        example: 60,
      },
      { name: 'sun', unit: 'W/m²', meaning: 'on the surface', least: 0, most: 1400, example: 800 },
      { name: 'film', unit: 'W/m²K', meaning: 'outside film, 17 in summer', least: 5, most: 60, example: 17 },
    ],
    output: { name: 'temperature', unit: '°C' },
    source: '[ASHRAE2017]',
    calculate: given =>
      solAir(of(given, 'air'), of(given, 'absorbed') * percent, of(given, 'sun'), of(given, 'film')),
  },
  {
    name: 'standard-pressure',
    says: 'Air pressure of the standard atmosphere at a height above the sea.',
    inputs: [
      { name: 'elevation', unit: 'm', meaning: 'above the sea', least: -500, most: 11000, example: 1000 },
    ],
    output: { name: 'pressure', unit: 'Pa' },
    source: '[ASHRAE2017]',
    calculate: given => standardPressure(of(given, 'elevation')),
  },
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
  {
    name: 'heat-index',
    says: 'How warm air and humidity feel in the shade.',
    inputs: [air(20, 50), humidity],
    output: { name: 'heat index', unit: '°C' },
    source: '[NWS1990]',
    caution: `Full sun adds up to 8 K. ${crew}`,
    calculate: given => heatIndex(of(given, 'air'), of(given, 'humidity') * percent),
  },
  {
    name: 'wbgt-from-air',
    says: 'Wet-bulb globe temperature from air and humidity, for sun and light wind.',
    inputs: [air(15, 45), humidity],
    output: { name: 'WBGT', unit: '°C' },
    source: '[BoM2010]',
    caution: `High at night, under cloud and in wind; low in strong sun without wind. ${crew}`,
    calculate: given => wbgtFromAir(of(given, 'air'), of(given, 'humidity') * percent),
  },
  {
    name: 'wbgt-limit',
    says: 'Highest WBGT for continuous work at a metabolic rate, for people used to the heat.',
    inputs: [
      {
        name: 'rate',
        unit: 'W',
        meaning: 'metabolic rate: light 180, moderate 300, heavy 415',
        least: 100,
        most: 600,
        example: 300,
      },
    ],
    output: { name: 'WBGT', unit: '°C' },
    source: '[NIOSH2016]',
    caution: crew,
    calculate: given => wbgtLimit(of(given, 'rate'), true),
  },
  {
    name: 'wind-chill',
    says: 'How cold wind makes bare skin.',
    inputs: [
      { ...air(-50, 10), example: -10 },
      { ...wind, meaning: 'wind at 10 m', example: 30 },
    ],
    output: { name: 'wind chill', unit: '°C' },
    source: '[Osczevski2005]',
    caution: crew,
    calculate: given => windChill(of(given, 'air'), of(given, 'wind') * kmh),
  },
  {
    name: 'clear-sky-global',
    says: 'Sun on the horizontal under a clear sky.',
    inputs: [altitude],
    output: { name: 'global radiation', unit: 'W/m²' },
    source: '[Haurwitz1945]',
    calculate: given => haurwitzGlobal(Math.sin(of(given, 'altitude') * degree)),
  },
  {
    name: 'air-mass',
    says: 'How many atmospheres thick the air is towards the sun.',
    inputs: [altitude],
    output: { name: 'air mass', unit: '' },
    source: '[KastenYoung1989]',
    calculate: given => airMass(of(given, 'altitude') * degree),
  },
  {
    name: 'cloud-transmission',
    says: 'Share of the clear sky’s sun that cloud lets through.',
    inputs: [{ name: 'cover', unit: '%', meaning: 'cloud cover', least: 0, most: 100, example: 50 }],
    output: { name: 'share', unit: '%' },
    source: '[KastenCzeplak1980]',
    calculate: given => cloudTransmission(of(given, 'cover') * percent) / percent,
  },
  {
    name: 'sky-temperature',
    says: 'What a surface radiates against at night.',
    inputs: [
      { ...air(-20, 45), example: 20 },
      { name: 'dewPoint', unit: '°C', meaning: 'dew point of the air', least: -25, most: 30, example: 10 },
      { name: 'cover', unit: '%', meaning: 'cloud cover', least: 0, most: 100, example: 0 },
    ],
    output: { name: 'temperature', unit: '°C' },
    source: '[Martin1984]',
    calculate: given => skyTemperature(of(given, 'air'), of(given, 'dewPoint'), of(given, 'cover') * percent),
  },
]

const of = (given: Readonly<Record<string, number>>, name: string): number => given[name] ?? Number.NaN
