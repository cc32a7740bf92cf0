import type { Formula } from '../formula/index.js'
import { airMass, cloudTransmission, haurwitzGlobal, skyTemperature } from './clear-sky.js'
import { air, altitude, degree, of, percent } from './formula-inputs.js'
import { solAir } from './sol-air.js'

/** What `calc` offers about sun and sky. */
export const sunFormulas: readonly Formula[] = [
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
]
