import type { NextGain } from '@dawnlift/core/campaign'
import { type Limit, sayLimit } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'
import { z } from 'zod'
import { momentText } from './moment-text.js'

/** What stops a lift. */
export const limitSchema = z.strictObject({
  kind: z.string().meta({ description: 'What limits, such as mix-hot, buckling, shift' }),
  say: z.string().meta({ description: 'In words, in the units of the job' }),
  at: z.iso.datetime().optional(),
  asked: z.number(),
  allowed: z.number(),
  unit: z.string().meta({ description: 'Unit of asked and allowed' }),
  source: z.string(),
})

/** What relaxing a limit would buy. */
export const gainSchema = z.strictObject({
  lever: z.string(),
  setting: z.number(),
  settingUnit: z.string(),
  layers: z.int().nonnegative(),
  days: z.int().meta({ description: 'Days sooner that the walls are up' }),
  bindsNext: limitSchema,
})

export const limitReport = (limit: Limit, { job }: Plan): z.infer<typeof limitSchema> => ({
  kind: limit.kind,
  say: sayLimit(limit, job.units, job.site.timeZone),
  ...(limit.at === undefined ? {} : { at: momentText(limit.at) }),
  asked: limit.demand,
  allowed: limit.capacity,
  unit: limit.unit,
  source: limit.source,
})

export const gainReport = (gain: NextGain, plan: Plan): z.infer<typeof gainSchema> => ({
  lever: gain.lever,
  setting: gain.setting,
  settingUnit: gain.unit,
  layers: gain.layers,
  days: gain.days,
  bindsNext: limitReport(gain.bindsNext, plan),
})
