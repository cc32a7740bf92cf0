import { explainLift, type Lift } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'
import { z } from 'zod'
import { gainReport, gainSchema, limitReport, limitSchema } from './limit-report.js'
import { momentText } from './moment-text.js'

const count = z.int().nonnegative()
const moment = z.iso.datetime()

/** The layers one section gains in one go, and why not more. */
export const liftSchema = z.strictObject({
  id: z.string(),
  section: z.string(),
  firstLayer: count,
  lastLayer: count,
  wishedLayers: count,
  start: moment,
  end: moment,
  layerEnds: z.array(moment),
  bead_m: z.number(),
  volume_m3: z.number(),
  standingSafety: z
    .number()
    .meta({ description: 'Factor, capacity over demand: a screening value for a licensed engineer' }),
  pauseBudget_s: z.number(),
  why: z.string(),
  binding: limitSchema,
  runnersUp: z.array(
    z.strictObject({
      layers: count.meta({ description: 'What this limit alone would allow' }),
      limit: limitSchema,
    }),
  ),
  nextGain: gainSchema.optional(),
})

export function liftReport(lift: Lift, plan: Plan): z.infer<typeof liftSchema> {
  const { units, site } = plan.job
  return {
    id: lift.id,
    section: lift.section,
    firstLayer: lift.firstLayer,
    lastLayer: lift.lastLayer,
    wishedLayers: lift.wishedLayers,
    start: momentText(lift.start),
    end: momentText(lift.end),
    layerEnds: lift.layerEnds.map(momentText),
    bead_m: lift.length,
    volume_m3: lift.volume,
    standingSafety: lift.safety,
    pauseBudget_s: lift.pauseBudget,
    why: explainLift(lift, units, site.timeZone),
    binding: limitReport(lift.binding, plan),
    runnersUp: lift.runnersUp.map(({ limit, layers }) => ({ layers, limit: limitReport(limit, plan) })),
    ...(lift.nextGain ? { nextGain: gainReport(lift.nextGain, plan) } : {}),
  }
}
