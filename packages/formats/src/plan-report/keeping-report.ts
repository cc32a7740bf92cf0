import type { LiftCure } from '@dawnlift/core/plan'
import type { ColumnPour } from '@dawnlift/core/pour'
import { z } from 'zod'
import { momentText } from './moment-text.js'

/** How a lift is kept until it is strong. */
export const cureSchema = z.strictObject({
  lift: z.string(),
  cover: z.string(),
  peak_C: z.number().meta({ description: 'Warmest the wall gets while it hardens' }),
  peakAt: z.iso.datetime(),
  steps: z.array(
    z.strictObject({
      id: z.string(),
      at: z.iso.datetime(),
      do: z.enum(['cover', 'wet', 'check-temperature', 'heat', 'uncover']),
      until: z.iso
        .datetime()
        .optional()
        .meta({ description: 'Last round, where the rounds of a day are told as one' }),
      water_L: z.number().optional(),
      expected_C: z.number().optional().meta({ description: 'Temperature to be expected, or to be held' }),
      drying_kg_per_m2_per_h: z
        .number()
        .optional()
        .meta({ description: 'Drying index until the cover is on' }),
      heating_W: z.number().optional(),
      say: z.string(),
      source: z.string(),
    }),
  ),
  milestones: z.array(
    z.strictObject({
      kind: z.string(),
      at: z.iso.datetime().optional().meta({ description: 'Absent: not reached while the cure is followed' }),
      strength_Pa: z.number().optional(),
      say: z.string(),
      source: z.string(),
    }),
  ),
})

/** How a column is poured into its printed shell. */
export const pourSchema = z.strictObject({
  column: z.string(),
  wall: z.string(),
  volume_m3: z.number(),
  lifts: z.int().positive(),
  liftHeight_m: z.number(),
  waitBetween_s: z.number(),
  riseMost_m_per_s: z.number().optional(),
  pressure_Pa: z.number(),
  bearable_Pa: z.number().meta({ description: 'What the shell bears after factors: a screening value' }),
  strengthNeeded_Pa: z.number().meta({
    description: 'Of the shell, for the tallest lift that it will bear at 28 days within the rules',
  }),
})

export const cureReport = ({
  lift,
  cover,
  peak,
  steps,
  milestones,
}: LiftCure): z.infer<typeof cureSchema> => ({
  lift,
  cover,
  peak_C: peak.temperature,
  peakAt: momentText(peak.at),
  steps: steps.map(({ id, at, until, do: deed, litres, temperature, drying, heating, say, source }) => ({
    id,
    at: momentText(at),
    do: deed,
    ...(until === undefined ? {} : { until: momentText(until) }),
    ...(litres === undefined ? {} : { water_L: litres }),
    ...(temperature === undefined ? {} : { expected_C: temperature }),
    ...(drying === undefined ? {} : { drying_kg_per_m2_per_h: drying }),
    ...(heating === undefined ? {} : { heating_W: heating }),
    say,
    source,
  })),
  milestones: milestones.map(({ kind, at, strength, say, source }) => ({
    kind,
    ...(at === undefined ? {} : { at: momentText(at) }),
    ...(strength === undefined ? {} : { strength_Pa: strength }),
    say,
    source,
  })),
})

export const pourReport = (pour: ColumnPour): z.infer<typeof pourSchema> => ({
  column: pour.cavity,
  wall: pour.wall,
  volume_m3: pour.volume,
  lifts: pour.lifts,
  liftHeight_m: pour.liftHeight,
  waitBetween_s: pour.wait,
  ...(pour.rateMost === undefined ? {} : { riseMost_m_per_s: pour.rateMost }),
  pressure_Pa: pour.pressure,
  bearable_Pa: pour.bearable,
  strengthNeeded_Pa: pour.strengthNeeded,
})
