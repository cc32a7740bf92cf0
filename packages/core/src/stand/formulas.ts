import type { Formula } from '../formula/index.js'
import { accessZoneWidth } from './access-zone.js'
import { bucklingHeight, type RisingWall } from './buckling-height.js'
import { criticalRise, firstLayerYield, linearCollapseHeight } from './collapse-height.js'
import { greenhillHeight } from './greenhill.js'
import { shearLagShare } from './make-up.js'
import { GRAVITY } from './members.js'
import { mohrCoulombStrength } from './strength.js'
import { overturningPressure, windPressure, windSpeedOfPressure } from './wind.js'

type Inputs = Readonly<Record<string, number>>

const density = {
  name: 'density',
  unit: 'kg/m³',
  meaning: 'of the fresh mix',
  least: 500,
  most: 4000,
  example: 2150,
}
const thickness = { name: 'thickness', unit: 'mm', meaning: 'of the wall', least: 1, most: 2000, example: 50 }
const height = { name: 'height', unit: 'm', meaning: 'of the wall', least: 0.01, most: 30, example: 1 }
const modulus = { name: 'modulus', unit: 'kPa', meaning: 'Young’s modulus', least: 0.1, example: 100 }
const poisson = {
  name: 'poisson',
  unit: '',
  meaning: 'Poisson’s ratio',
  least: 0,
  most: 0.499,
  example: 0.3,
}
const layerHeight = {
  name: 'layerHeight',
  unit: 'mm',
  meaning: 'of one layer',
  least: 1,
  most: 200,
  example: 20,
}
const layerTime = {
  name: 'layerTime',
  unit: 'min',
  meaning: 'from one layer to the next',
  least: 0.01,
  example: 8,
}
const yieldStart = {
  name: 'yieldStress',
  unit: 'Pa',
  meaning: 'of material just laid',
  least: 1,
  example: 2000,
}
const yieldRate = {
  name: 'rate',
  unit: 'Pa/s',
  meaning: 'growth of the yield stress at rest',
  least: 0,
  example: 0.8,
}
const coefficient = {
  name: 'coefficient',
  unit: '',
  meaning: 'force coefficient Cf',
  least: 0.5,
  most: 2.5,
  example: 1.4,
}
const caution = 'Screening value: a licensed engineer and local codes decide. Test the mix on site.'

const get = (inputs: Inputs, name: string): number => inputs[name] ?? Number.NaN
const riseOf = (inputs: Inputs) => get(inputs, 'layerHeight') / 1000 / (get(inputs, 'layerTime') * 60)
const weightOf = (inputs: Inputs) => get(inputs, 'density') * GRAVITY

/** The standing formulas of the registry. Where a wall never fails the answer is infinite, and `says` so. */
export const formulas: readonly Formula[] = [
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
  {
    name: 'greenhill-height',
    says: 'Height at which a free wall of one stiffness buckles under its own weight: (7.837·E·h²/(12(1 − ν²)ρg))^⅓',
    inputs: [modulus, thickness, density, poisson],
    output: { name: 'height', unit: 'm' },
    source: '[Greenhill1881]',
    caution: `${caution} Perfect wall: multiply by the imperfection factor.`,
    calculate: inputs =>
      greenhillHeight(
        (get(inputs, 'modulus') * 1000) / (1 - get(inputs, 'poisson') ** 2),
        get(inputs, 'thickness') / 1000 / Math.sqrt(12),
        get(inputs, 'density'),
        GRAVITY,
      ),
  },
  {
    name: 'strip-buckling-height',
    says: 'Height at which a leaf held at both ends buckles while it cures and rises; ∞: not up to 20 m',
    inputs: [
      modulus,
      { name: 'curing', unit: 'kPa/min', meaning: 'growth of the modulus', least: 0, example: 1.2 },
      thickness,
      { name: 'length', unit: 'm', meaning: 'between returns', least: 0.05, example: 3 },
      density,
      poisson,
      layerHeight,
      layerTime,
    ],
    output: { name: 'height', unit: 'm' },
    source: '[Suiker2018]',
    caution: `${caution} Simply supported at the returns, foot clamped, perfect wall.`,
    calculate: stripHeight,
  },
  {
    name: 'shear-lag-share',
    says: 'Share of a wythe that works between webs when the wall leans',
    inputs: [
      { name: 'spacing', unit: 'm', meaning: 'between webs', least: 0.01, example: 0.6 },
      height,
      poisson,
    ],
    output: { name: 'share', unit: '' },
    source: '[TimoshenkoGoodier1970]',
    caution,
    calculate: inputs =>
      shearLagShare(get(inputs, 'spacing') / 2, 2 * get(inputs, 'height'), get(inputs, 'poisson')),
  },
  {
    name: 'wind-pressure',
    says: 'Wind pressure on a free-standing wall: 0.613·Cf·V²',
    inputs: [{ name: 'gust', unit: 'km/h', meaning: '3-second gust', least: 0, example: 50 }, coefficient],
    output: { name: 'pressure', unit: 'Pa' },
    source: '[ASCE7]',
    caution,
    calculate: inputs => windPressure(get(inputs, 'gust') / 3.6, get(inputs, 'coefficient')),
  },
  {
    name: 'wind-overturning',
    says: 'Gust that tips a solid wall held down by its weight alone: p = ρgt²/H, V = √(p/(0.613·Cf))',
    inputs: [thickness, height, density, coefficient],
    output: { name: 'gust', unit: 'km/h' },
    source: '[ASCE7]',
    caution: `${caution} No safety factor is in this number.`,
    calculate: inputs => {
      const solidWidth = get(inputs, 'thickness') / 1000
      const wall = {
        height: get(inputs, 'height'),
        thickness: solidWidth,
        solidWidth,
        weight: weightOf(inputs),
      }
      return windSpeedOfPressure(overturningPressure(wall), get(inputs, 'coefficient')) * 3.6
    },
  },
  {
    name: 'access-zone-width',
    says: 'Width of the limited-access zone beside a wall: its finished height + 4 ft',
    inputs: [height],
    output: { name: 'width', unit: 'm' },
    source: '[OSHA1926.706]',
    caution: 'Written for masonry; a prudent analogy for printed walls. Local law decides.',
    calculate: inputs => accessZoneWidth(get(inputs, 'height')),
  },
]

function stripHeight(inputs: Inputs): number {
  const start = get(inputs, 'modulus') * 1000
  const wall: RisingWall = {
    thickness: get(inputs, 'thickness') / 1000,
    density: get(inputs, 'density'),
    gravity: GRAVITY,
    poisson: get(inputs, 'poisson'),
    curing: { kind: 'linear', start, rate: (get(inputs, 'curing') * 1000) / 60 / start },
    rise: riseOf(inputs),
    support: { kind: 'simple', length: get(inputs, 'length') },
  }
  const answer = bucklingHeight(wall, 20)
  return answer.kind === 'buckles' ? answer.height : Number.POSITIVE_INFINITY
}
