import type { MixModel } from '@dawnlift/core/mix'
import { z } from 'zod'
import { factor, share } from './bare-number.js'
import {
  stiffnessGrowthReport,
  stiffnessGrowthSchema,
  strengthGrowthReport,
  strengthGrowthSchema,
  yieldGrowthReport,
  yieldGrowthSchema,
} from './growth-report.js'

const growths = z.strictObject({ yield: yieldGrowthSchema, stiffness: stiffnessGrowthSchema })

/** What the planner knows of a mix. */
export const mixSchema = z.strictObject({
  name: z.string(),
  provenance: z.string(),
  density_kg_per_m3: z.number(),
  poisson: factor('Poisson’s ratio'),
  fitted: growths.meta({ description: 'Best estimate' }),
  lower: growths.meta({ description: 'The band that planning uses' }),
  lowerProbability: share('chance that the true curve lies under the band'),
  strength: strengthGrowthSchema,
  activation_K: z.number().meta({ description: 'Activation energy over the gas constant' }),
  reference_C: z.number().meta({ description: 'Temperature of the equivalent age' }),
  openTime_s: z.number(),
  testedTo_s: z.number(),
  testedFrom_C: z.number().optional(),
  testedUpTo_C: z.number().optional(),
  cutFrom_Pa: z.number(),
  cutUntil_Pa: z.number(),
  plasticViscosity_Pa_s: z.number(),
  bag_kg: z.number(),
  water: share('water over dry material, by mass'),
  binder: share('binder in the dry material, by mass'),
  hydrationHeat_J_per_kg: z.number(),
  aggregate_m: z.number(),
  sources: z.record(z.string(), z.string()).optional(),
})

export const mixReport = (mix: MixModel): z.infer<typeof mixSchema> => ({
  name: mix.name,
  provenance: mix.provenance,
  density_kg_per_m3: mix.density,
  poisson: mix.poisson,
  fitted: growthsReport(mix.fitted),
  lower: growthsReport(mix.lower),
  lowerProbability: mix.lowerProbability,
  strength: strengthGrowthReport(mix.strength),
  activation_K: mix.activation,
  reference_C: mix.reference,
  openTime_s: mix.openTime,
  testedTo_s: mix.testedTo,
  ...(mix.testedTemperatures
    ? { testedFrom_C: mix.testedTemperatures[0], testedUpTo_C: mix.testedTemperatures[1] }
    : {}),
  cutFrom_Pa: mix.cutFrom,
  cutUntil_Pa: mix.cutUntil,
  plasticViscosity_Pa_s: mix.plasticViscosity,
  bag_kg: mix.bag,
  water: mix.waterRatio,
  binder: mix.binderShare,
  hydrationHeat_J_per_kg: mix.hydrationHeat,
  aggregate_m: mix.aggregate,
  ...(mix.sources ? { sources: { ...mix.sources } } : {}),
})

const growthsReport = ({ yield: stress, stiffness }: MixModel['fitted']) => ({
  yield: yieldGrowthReport(stress),
  stiffness: stiffnessGrowthReport(stiffness),
})
