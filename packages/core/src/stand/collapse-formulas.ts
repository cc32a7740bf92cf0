import type { Formula } from '../formula/index.js'
import {
  bilinearCollapseLayers,
  criticalRise,
  exponentialCollapseHeight,
  firstLayerYield,
  linearCollapseHeight,
} from './collapse-height.js'
import {
  caution,
  density,
  get,
  type Inputs,
  layerHeight,
  layerTime,
  riseOf,
  weightOf,
  yieldRate,
  yieldStart,
} from './formula-inputs.js'
import { mohrCoulombStrength, plasticStrength } from './strength.js'

/** Strength of fresh material, and how high it carries a rising wall. */
export const collapseFormulas: readonly Formula[] = [
  {
    name: 'first-layer-yield',
    says: 'Yield stress a bead just laid needs to keep its shape: ρgh/√3',
    inputs: [density, layerHeight],
    output: { name: 'yield stress', unit: 'Pa' },
    source: '[Roussel2018]',
    caution,
    calculate: inputs => firstLayerYield(weightOf(inputs), get(inputs, 'layerHeight') / 1000),
  },
  {
    name: 'collapse-height',
    says: 'Height at which the foot of a rising wall yields: √3τ₀/(ρg − √3A/rise); ∞: it never does',
    inputs: [yieldStart, { ...yieldRate, example: 0.2 }, density, layerHeight, layerTime],
    output: { name: 'height', unit: 'm' },
    source: '[Perrot2016]',
    caution: `${caution} Strength only: buckling may come first.`,
    calculate: inputs => {
      const [start, rate] = [get(inputs, 'yieldStress'), get(inputs, 'rate')].map(
        value => value * Math.sqrt(3),
      )
      const answer = linearCollapseHeight(start!, rate!, riseOf(inputs), weightOf(inputs))
      return answer.kind === 'collapses' ? answer.height : Number.POSITIVE_INFINITY
    },
  },
  {
    name: 'perrot-rise',
    says: 'Rise of the wall below which its foot never yields: Rc = √3·A/(ρg)',
    inputs: [yieldRate, density],
    output: { name: 'rise', unit: 'm/h' },
    source: '[Perrot2016]',
    caution,
    calculate: inputs => criticalRise(get(inputs, 'rate'), Math.sqrt(3), weightOf(inputs)) * 3600,
  },
  {
    name: 'collapse-height-exponential',
    says: 'Height at which the foot yields when strength tends to an end: H̄ = r + (1 − r)·exp(−ξ̄·H̄)',
    inputs: [
      { name: 'start', unit: 'kPa', meaning: 'uniaxial strength just laid', least: 0.01, example: 6 },
      { name: 'end', unit: 'kPa', meaning: 'strength it tends to', least: 0.01, example: 60 },
      { name: 'curing', unit: '1/h', meaning: 'share of the way left, each hour', least: 0, example: 1 },
      density,
      layerHeight,
      layerTime,
    ],
    output: { name: 'height', unit: 'm' },
    source: '[Suiker2018]',
    caution: `${caution} Strength only: buckling may come first.`,
    calculate: exponentialHeight,
  },
  {
    name: 'collapse-layers',
    says: 'Layers at which the foot yields when strength grows fast and then slowly; ∞: it never does, or not after the knee',
    inputs: [
      { name: 'stress', unit: 'Pa', meaning: 'yield stress at the knee', least: 1, example: 3000 },
      { name: 'knee', unit: 'min', meaning: 'age at the knee', least: 0, example: 8 },
      { ...yieldRate, meaning: 'growth after the knee', example: 0.2 },
      { name: 'shape', unit: '', meaning: '2 for slender layers, more for squat ones', least: 2, example: 2 },
      density,
      layerHeight,
      layerTime,
    ],
    output: { name: 'layers', unit: '' },
    source: '[Kruger2019]',
    caution: `${caution} Strength only: buckling may come first.`,
    calculate: inputs =>
      bilinearCollapseLayers(
        { stress: get(inputs, 'stress'), age: get(inputs, 'knee') * 60 },
        get(inputs, 'rate'),
        get(inputs, 'shape'),
        {
          stress: (weightOf(inputs) * get(inputs, 'layerHeight')) / 1000,
          time: get(inputs, 'layerTime') * 60,
        },
      ) ?? Number.POSITIVE_INFINITY,
  },
  {
    name: 'von-mises-strength',
    says: 'Compression that fresh material bears: √3 times its yield stress at that age',
    inputs: [
      yieldStart,
      yieldRate,
      { name: 'age', unit: 'min', meaning: 'equivalent age', least: 0, example: 60 },
    ],
    output: { name: 'strength', unit: 'kPa' },
    source: '[Roussel2018]',
    caution:
      'Press fresh specimens too: measured compression and √3 times a vane’s stress differ by up to half.',
    calculate: inputs => {
      const yielding = {
        kind: 'linear',
        start: get(inputs, 'yieldStress'),
        rate: get(inputs, 'rate'),
      } as const
      return plasticStrength({ kind: 'von-mises' }, yielding, get(inputs, 'age') * 60) / 1000
    },
  },
  {
    name: 'mohr-coulomb-strength',
    says: 'Uniaxial strength of fresh material: 2c·cos φ/(1 − sin φ)',
    inputs: [
      { name: 'cohesion', unit: 'kPa', meaning: 'c', least: 0, example: 3.05 },
      { name: 'friction', unit: '°', meaning: 'friction angle φ', least: 0, most: 60, example: 20 },
    ],
    output: { name: 'strength', unit: 'kPa' },
    source: '[Suiker2018]',
    caution:
      'For one published mix this lies 46 % over the strength measured in compression [Wolfs2018]: measure it.',
    calculate: inputs =>
      mohrCoulombStrength(get(inputs, 'cohesion'), (get(inputs, 'friction') * Math.PI) / 180),
  },
]

function exponentialHeight(inputs: Inputs): number {
  const start = get(inputs, 'start') * 1000
  const unit = start / weightOf(inputs)
  const rate = (get(inputs, 'curing') / 3600 / riseOf(inputs)) * unit
  return exponentialCollapseHeight((get(inputs, 'end') * 1000) / start, rate) * unit
}
