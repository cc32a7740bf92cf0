import { z } from 'zod'
import { block, choice, file, quantity, share, words } from './field.js'

const yieldGrowth = block({
  growth: choice(['linear', 'bilinear', 'exponential']),
  start: quantity('pressure', { least: 0, above: true, most: 1e6 }),
  rate: quantity('pressureRate', { least: 0 }).meta({
    description: 'Growth at once; before the knee when bilinear',
  }),
  kneeAge: quantity('time').optional(),
  lateRate: quantity('pressureRate', { least: 0 }).optional(),
  time: quantity('time', { least: 1 })
    .optional()
    .meta({ description: 'Time constant of exponential growth' }),
})

const stiffness = block({
  start: quantity('pressure', { least: 0, above: true, most: 1e9 }),
  rate: quantity('pressureRate'),
  bend: quantity('pressureBend').optional(),
})

const strength = block({
  ultimate: quantity('pressure', { least: 1e5, most: 3e8 }),
  rateConstant: quantity('rateConstant', { least: 0, above: true }),
  start: quantity('time'),
})

const bondTest = block({
  rest: quantity('time', { least: 60, most: 86_400 }).meta({
    description: 'Longest rest at the reference temperature after which the bond test still passed',
  }),
  source: words().optional().meta({ description: 'Which test, and when' }),
})

const pumping = block({
  yield: quantity('pressure', { most: 1e5 }).meta({ description: 'Yield stress of the mix in motion' }),
  slipYield: quantity('pressure', { most: 1e5 }).meta({ description: 'Of the layer it slips on' }),
  slipLayer: block({
    viscosity: quantity('viscosity', { least: 0, above: true }),
    thickness: quantity('length', { least: 0, above: true, most: 0.01 }),
  }).meta({ description: 'The paste it slips on: its viscosity and how thick it lies on the hose' }),
})

/** The mix: `default`, or whatever of it the site knows; the rest stays as in the default mix. */
export const mixSchema = z.union([
  z.literal('default'),
  block({
    name: words().optional(),
    tests: file().optional().meta({ description: 'Site tests of the mix, a CSV file beside the job' }),
    density: quantity('density', { least: 800, most: 4000 }).optional(),
    poisson: share({ least: 0, most: 0.5 }).optional(),
    yield: yieldGrowth.optional(),
    stiffness: stiffness.optional(),
    lowerShare: share({ least: 0.05, most: 1 })
      .optional()
      .meta({ description: 'Share of the fitted curves that planning relies on' }),
    strength: strength.optional(),
    activation: quantity('temperatureDifference', { least: 1000, most: 12_000 })
      .optional()
      .meta({ description: 'Activation energy over the gas constant, in K' }),
    reference: quantity('temperature', { least: 0, most: 40 }).optional(),
    openTime: quantity('time', { least: 60 }).optional(),
    testedTo: quantity('time', { least: 60 }).optional().meta({
      description: 'Age at which the tests end; no growth of the job’s own curves is counted on beyond',
    }),
    bondTest: bondTest.optional(),
    pumping: pumping.optional(),
    cutFrom: quantity('pressure').optional(),
    cutUntil: quantity('pressure').optional(),
    plasticViscosity: quantity('viscosity').optional(),
    bag: quantity('mass', { least: 1, most: 5000 }).optional(),
    waterRatio: share().optional(),
    binderShare: share().optional(),
    hydrationHeat: quantity('heatPerMass').optional(),
    aggregate: quantity('length', { least: 0.0001, most: 0.05 }).optional(),
  }),
])
