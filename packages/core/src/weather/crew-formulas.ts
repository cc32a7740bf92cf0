import type { Formula } from '../formula/index.js'
import { wbgtLimit, windChill } from './crew-heat.js'
import { air, humidity, kmh, of, percent, wind } from './formula-inputs.js'
import { heatIndex, wbgtFromAir } from './heat-stress.js'

const crew = 'A screening value: local rules and the site’s heat plan govern.'

/** What `calc` offers about the crew. */
export const crewFormulas: readonly Formula[] = [
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
]
