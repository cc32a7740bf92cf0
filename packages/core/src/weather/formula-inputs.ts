import type { FormulaInput } from '../formula/index.js'
import { evaporationRange } from './evaporation.js'

/** Inputs that several formulas take, in the units people write. */
export const percent = 0.01
export const kmh = 1 / 3.6
export const degree = Math.PI / 180

export const air = (least = -40, most = 60): FormulaInput => ({
  name: 'air',
  unit: '°C',
  meaning: 'air temperature',
  least,
  most,
  example: 30,
})
export const humidity: FormulaInput = {
  name: 'humidity',
  unit: '%',
  meaning: 'relative humidity',
  least: 0,
  most: 100,
  example: 50,
}
export const concrete: FormulaInput = {
  name: 'concrete',
  unit: '°C',
  meaning: 'temperature of the concrete surface',
  least: evaporationRange.concrete[0],
  most: evaporationRange.concrete[1],
  example: 30,
}
export const wind: FormulaInput = {
  name: 'wind',
  unit: 'km/h',
  meaning: 'wind 0.5 m above the surface; two thirds of the wind at 10 m',
  least: 0,
  most: evaporationRange.wind[1] * 3.6,
  example: 20,
}
export const pressure: FormulaInput = {
  name: 'pressure',
  unit: 'kPa',
  meaning: 'air pressure at the site',
  least: 50,
  most: 110,
  example: 101.325,
}
export const altitude: FormulaInput = {
  name: 'altitude',
  unit: '°',
  meaning: 'height of the sun above the horizon',
  least: 0,
  most: 90,
  example: 30,
}

export const of = (given: Readonly<Record<string, number>>, name: string): number => given[name] ?? Number.NaN
