import type { Plan } from '@dawnlift/core/plan'
import type { Finding } from '@dawnlift/core/result'
import { z } from 'zod'

/** A verdict of the engineering, with its evidence. */
export const findingSchema = z.strictObject({
  check: z.string(),
  at: z.string(),
  x_m: z.number().optional(),
  y_m: z.number().optional(),
  demand: z.number(),
  capacity: z.number(),
  unit: z.string().meta({ description: 'Unit of demand and capacity' }),
  verdict: z.enum(['pass', 'warn', 'fail', 'outside-range']),
  source: z.string(),
  say: z.string(),
})

/** A height moved to the nearest layer. */
export const snapSchema = z.strictObject({ what: z.string(), asked_m: z.number(), got_m: z.number() })

export const findingReport = ({ point, ...finding }: Finding): z.infer<typeof findingSchema> => ({
  ...finding,
  ...(point ? { x_m: point[0], y_m: point[1] } : {}),
})

export const snapReport = ({ what, asked, got }: Plan['snaps'][number]): z.infer<typeof snapSchema> => ({
  what,
  asked_m: asked,
  got_m: got,
})
