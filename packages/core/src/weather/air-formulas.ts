import type { Formula } from '../formula/index.js'
import { air, humidity, of, percent, pressure } from './formula-inputs.js'
import { dewPoint, saturationPressure, standardPressure, wetBulb, wetBulbQuick } from './psychrometrics.js'

/** What `calc` offers about moist air. */
export const airFormulas: readonly Formula[] = [
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
    name: 'standard-pressure',
    says: 'Air pressure of the standard atmosphere at a height above the sea.',
    inputs: [
      { name: 'elevation', unit: 'm', meaning: 'above the sea', least: -500, most: 11000, example: 1000 },
    ],
    output: { name: 'pressure', unit: 'Pa' },
    source: '[ASHRAE2017]',
    calculate: given => standardPressure(of(given, 'elevation')),
  },
]
