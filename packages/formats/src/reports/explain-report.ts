import type { Lift } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'
import { z } from 'zod'
import { gainReport, gainSchema, liftReport, liftSchema } from '../plan-report/index.js'
import { headSchema, reportHead } from './report-head.js'

/** What `dawnlift explain --json` prints. */
export const explainReportSchema = z
  .strictObject({
    ...headSchema('explain'),
    lifts: z.array(
      liftSchema.extend({
        gains: z.array(gainSchema).meta({ description: 'Best first, nextGain among them' }),
      }),
    ),
  })
  .meta({ title: 'Why lifts are as high as they are' })

export const explainReport = (plan: Plan, lifts: readonly Lift[]): z.infer<typeof explainReportSchema> => ({
  ...reportHead('explain'),
  lifts: lifts.map(lift => ({
    ...liftReport(lift, plan),
    gains: (lift.gains ?? []).map(gain => gainReport(gain, plan)),
  })),
})
