import type { Formula } from '../formula/index.js'
import { bucklingHeight, lengthUnit, type RisingWall } from './buckling-height.js'
import type { Curing } from './curing.js'
import { curvatureGain } from './curvature.js'
import {
  caution,
  curing,
  density,
  get,
  height,
  type Inputs,
  layerHeight,
  layerTime,
  length,
  modulus,
  poisson,
  riseOf,
  thickness,
  weightOf,
} from './formula-inputs.js'
import { greenhillHeight, suikerFitHeight } from './greenhill.js'
import { ringFactor } from './member-buckling.js'
import { GRAVITY } from './members.js'

const perfect = `${caution} Perfect wall: multiply by the imperfection factor.`
const radius = { name: 'radius', unit: 'm', meaning: 'of the middle line', least: 0.1, example: 1 }

/** How high a fresh wall rises before it buckles, free and held. */
export const bucklingFormulas: readonly Formula[] = [
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
    inputs: [modulus, curing, thickness, length, density, poisson, layerHeight, layerTime],
    output: { name: 'height', unit: 'm' },
    source: '[Suiker2018]',
    caution: `${caution} Simply supported at the returns, foot clamped, perfect wall.`,
    calculate: inputs => risingHeight(inputs, { kind: 'simple', length: get(inputs, 'length') }),
  },
  {
    name: 'strip-buckling-height-clamped',
    says: 'The same with clamped ends, by one wave along the wall; ∞: not up to 20 m',
    inputs: [modulus, curing, thickness, length, density, poisson, layerHeight, layerTime],
    output: { name: 'height', unit: 'm' },
    source: '[Suiker2018]',
    caution: `${perfect} One term for the shape: up to 4.5 % high on narrow walls.`,
    calculate: inputs => risingHeight(inputs, { kind: 'clamped', length: get(inputs, 'length') }),
  },
  {
    name: 'free-buckling-height',
    says: 'Height at which a leaf without returns buckles while it cures and rises; ∞: not up to 20 m',
    inputs: [modulus, curing, thickness, density, poisson, layerHeight, layerTime],
    output: { name: 'height', unit: 'm' },
    source: '[Suiker2018]',
    caution: perfect,
    calculate: inputs => risingHeight(inputs, { kind: 'free' }),
  },
  {
    name: 'free-buckling-height-exponential',
    says: 'The same where stiffness tends to an end; ∞: not up to 20 m',
    inputs: [
      modulus,
      { name: 'end', unit: 'kPa', meaning: 'modulus it tends to', least: 0.1, example: 1000 },
      { name: 'curing', unit: '1/h', meaning: 'share of the way left, each hour', least: 0, example: 1 },
      thickness,
      density,
      poisson,
      layerHeight,
      layerTime,
    ],
    output: { name: 'height', unit: 'm' },
    source: '[Suiker2018]',
    caution: perfect,
    calculate: inputs => {
      const start = get(inputs, 'modulus') * 1000
      const [end, rate] = [get(inputs, 'end') * 1000, get(inputs, 'curing') / 3600]
      return heightOf(inputs, { kind: 'exponential', start, end, rate }, { kind: 'free' })
    },
  },
  {
    name: 'buckling-height-fit',
    says: 'The published fit for a leaf without returns: L₀·(1.98635 + 0.996·ξ̄^0.793)',
    inputs: [modulus, curing, thickness, density, poisson, layerHeight, layerTime],
    output: { name: 'height', unit: 'm' },
    source: '[Suiker2018]',
    caution: 'A cross-check up to ξ̄ = 5, within 3.5 %; free-buckling-height is exact.',
    calculate: inputs => {
      const wall = wallOf(inputs, linearCuring(inputs), { kind: 'free' })
      const unit = lengthUnit(wall)
      const perSecond = get(inputs, 'curing') / 60 / get(inputs, 'modulus')
      return suikerFitHeight((perSecond * unit) / wall.rise) * unit
    },
  },
  {
    name: 'ring-buckling-factor',
    says: 'Times its own weight that a closed ring bears before it buckles: 0.605·E·h/(R·ρg·H)',
    inputs: [{ ...modulus, meaning: 'at 35 % of the height' }, thickness, radius, height, density],
    output: { name: 'factor', unit: '' },
    source: 'closed form',
    caution: perfect,
    calculate: inputs =>
      ringFactor(
        { radius: get(inputs, 'radius'), thickness: get(inputs, 'thickness') / 1000 },
        get(inputs, 'height'),
        get(inputs, 'modulus') * 1000,
        weightOf(inputs),
      ),
  },
  {
    name: 'curvature-gain',
    says: 'Times more weight that an open curved leaf bears than the same leaf laid straight',
    inputs: [thickness, radius, { ...length, meaning: 'along the middle line' }, height],
    output: { name: 'gain', unit: '' },
    source: 'fitted under our own shells',
    caution: 'Not published: screening only, the whole-section model decides.',
    calculate: inputs => {
      const leaf = {
        thickness: get(inputs, 'thickness') / 1000,
        radius: get(inputs, 'radius'),
        length: get(inputs, 'length'),
      }
      return curvatureGain(leaf, get(inputs, 'height'))
    },
  },
]

const linearCuring = (inputs: Inputs): Curing => {
  const start = get(inputs, 'modulus') * 1000
  return { kind: 'linear', start, rate: (get(inputs, 'curing') * 1000) / 60 / start }
}

const risingHeight = (inputs: Inputs, support: RisingWall['support']): number =>
  heightOf(inputs, linearCuring(inputs), support)

function heightOf(inputs: Inputs, curing: Curing, support: RisingWall['support']): number {
  const answer = bucklingHeight(wallOf(inputs, curing, support), 20)
  return answer.kind === 'buckles' ? answer.height : Number.POSITIVE_INFINITY
}

const wallOf = (inputs: Inputs, curing: Curing, support: RisingWall['support']): RisingWall => ({
  thickness: get(inputs, 'thickness') / 1000,
  density: get(inputs, 'density'),
  gravity: GRAVITY,
  poisson: get(inputs, 'poisson'),
  curing,
  rise: riseOf(inputs),
  support,
})
