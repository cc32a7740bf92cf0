import { GRAVITY } from './members.js'

export type Inputs = Readonly<Record<string, number>>

export const density = {
  name: 'density',
  unit: 'kg/m³',
  meaning: 'of the fresh mix',
  least: 500,
  most: 4000,
  example: 2150,
}
export const thickness = {
  name: 'thickness',
  unit: 'mm',
  meaning: 'of the wall',
  least: 1,
  most: 2000,
  example: 50,
}
export const height = { name: 'height', unit: 'm', meaning: 'of the wall', least: 0.01, most: 30, example: 1 }
export const modulus = { name: 'modulus', unit: 'kPa', meaning: 'Young’s modulus', least: 0.1, example: 100 }
export const curing = {
  name: 'curing',
  unit: 'kPa/min',
  meaning: 'growth of the modulus',
  least: 0,
  example: 1.2,
}
export const length = { name: 'length', unit: 'm', meaning: 'between returns', least: 0.05, example: 3 }
export const poisson = {
  name: 'poisson',
  unit: '',
  meaning: 'Poisson’s ratio',
  least: 0,
  most: 0.499,
  example: 0.3,
}
export const layerHeight = {
  name: 'layerHeight',
  unit: 'mm',
  meaning: 'of one layer',
  least: 1,
  most: 200,
  example: 20,
}
export const layerTime = {
  name: 'layerTime',
  unit: 'min',
  meaning: 'from one layer to the next',
  least: 0.01,
  example: 8,
}
export const yieldStart = {
  name: 'yieldStress',
  unit: 'Pa',
  meaning: 'of material just laid',
  least: 1,
  example: 2000,
}
export const yieldRate = {
  name: 'rate',
  unit: 'Pa/s',
  meaning: 'growth of the yield stress at rest',
  least: 0,
  example: 0.8,
}
export const coefficient = {
  name: 'coefficient',
  unit: '',
  meaning: 'force coefficient Cf',
  least: 0.5,
  most: 2.5,
  example: 1.4,
}
export const caution = 'Screening value: a licensed engineer and local codes decide. Test the mix on site.'

export const get = (inputs: Inputs, name: string): number => inputs[name] ?? Number.NaN
export const riseOf = (inputs: Inputs) => get(inputs, 'layerHeight') / 1000 / (get(inputs, 'layerTime') * 60)
export const weightOf = (inputs: Inputs) => get(inputs, 'density') * GRAVITY
