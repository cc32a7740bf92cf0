import type { Formula } from '../formula/index.js'
import { accessZoneWidth } from './access-zone.js'
import { bucklingFormulas } from './buckling-formulas.js'
import { collapseFormulas } from './collapse-formulas.js'
import { caution, coefficient, density, get, height, poisson, thickness, weightOf } from './formula-inputs.js'
import { shearLagShare } from './make-up.js'
import {
  constructionWindFactor,
  crackingPressure,
  overturningPressure,
  windPressure,
  windSpeedOfPressure,
} from './wind.js'

/** The standing formulas of the registry. Where a wall never fails the answer is infinite, and `says` so. */
export const formulas: readonly Formula[] = [
  ...collapseFormulas,
  ...bucklingFormulas,
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
    name: 'wind-cracking',
    says: 'Wind pressure at which the foot of a solid wall begins to crack: 2(f + ρgH)·S/H², S = t²/6',
    inputs: [
      thickness,
      height,
      density,
      { name: 'tension', unit: 'kPa', meaning: 'that the joint bears; 0 while green', least: 0, example: 0 },
    ],
    output: { name: 'pressure', unit: 'Pa' },
    source: 'closed form',
    caution: `${caution} No safety factor is in this number.`,
    calculate: inputs => {
      const solidWidth = get(inputs, 'thickness') / 1000
      const wall = { height: get(inputs, 'height'), solidWidth, weight: weightOf(inputs) }
      return crackingPressure({ ...wall, sectionModulus: solidWidth ** 2 / 6 }, get(inputs, 'tension') * 1000)
    },
  },
  {
    name: 'construction-wind',
    says: 'Share of the design wind speed while something is under construction',
    inputs: [{ name: 'weeks', unit: '', meaning: 'that the state lasts', least: 0, most: 260, example: 4 }],
    output: { name: 'share', unit: '' },
    source: '[ASCE37]',
    caution,
    calculate: inputs => constructionWindFactor(get(inputs, 'weeks')),
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
