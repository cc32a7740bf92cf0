import type { StiffnessGrowth, StrengthGrowth, YieldGrowth } from '@dawnlift/core/mix'
import { z } from 'zod'

const tested = { testedUntil_s: z.number().optional().meta({ description: 'Oldest equivalent age tested' }) }

/** Static yield stress against equivalent age. */
export const yieldGrowthSchema = z.union([
  z.strictObject({ kind: z.literal('linear'), start_Pa: z.number(), rate_Pa_per_s: z.number(), ...tested }),
  z.strictObject({
    kind: z.literal('bilinear'),
    start_Pa: z.number(),
    earlyRate_Pa_per_s: z.number(),
    kneeAge_s: z.number(),
    lateRate_Pa_per_s: z.number(),
    ...tested,
  }),
  z.strictObject({
    kind: z.literal('exponential'),
    start_Pa: z.number(),
    rate_Pa_per_s: z.number(),
    time_s: z.number(),
    ...tested,
  }),
])

/** Young's modulus: start + rate·t + bend·t². */
export const stiffnessGrowthSchema = z.strictObject({
  start_Pa: z.number(),
  rate_Pa_per_s: z.number(),
  bend_Pa_per_s2: z.number(),
  ...tested,
})

/** ultimate·k(t − t0)/(1 + k(t − t0)). */
export const strengthGrowthSchema = z.strictObject({
  ultimate_Pa: z.number(),
  rateConstant_per_s: z.number(),
  start_s: z.number(),
})

export function yieldGrowthReport(growth: YieldGrowth): z.infer<typeof yieldGrowthSchema> {
  switch (growth.kind) {
    case 'linear':
      return { kind: 'linear', start_Pa: growth.start, rate_Pa_per_s: growth.rate, ...testedUntil(growth) }
    case 'bilinear':
      return {
        kind: 'bilinear',
        start_Pa: growth.start,
        earlyRate_Pa_per_s: growth.earlyRate,
        kneeAge_s: growth.kneeAge,
        lateRate_Pa_per_s: growth.lateRate,
        ...testedUntil(growth),
      }
    case 'exponential':
      return {
        kind: 'exponential',
        start_Pa: growth.start,
        rate_Pa_per_s: growth.rate,
        time_s: growth.time,
        ...testedUntil(growth),
      }
  }
}

export const stiffnessGrowthReport = (growth: StiffnessGrowth): z.infer<typeof stiffnessGrowthSchema> => ({
  start_Pa: growth.start,
  rate_Pa_per_s: growth.rate,
  bend_Pa_per_s2: growth.bend,
  ...testedUntil(growth),
})

export const strengthGrowthReport = (growth: StrengthGrowth): z.infer<typeof strengthGrowthSchema> => ({
  ultimate_Pa: growth.ultimate,
  rateConstant_per_s: growth.rateConstant,
  start_s: growth.start,
})

const testedUntil = ({ until }: { readonly until?: number }) =>
  until === undefined ? {} : { testedUntil_s: until }
