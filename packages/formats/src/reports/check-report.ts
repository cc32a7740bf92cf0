import type { Plan } from '@dawnlift/core/plan'
import type { Problem } from '@dawnlift/core/result'
import { z } from 'zod'
import type { OpenedJob } from '../job-folder/index.js'
import { findingReport, findingSchema, snapReport, snapSchema } from '../plan-report/index.js'
import { headSchema, reportHead } from './report-head.js'

/** What `dawnlift check --json` prints. */
export const checkReportSchema = z
  .strictObject({
    ...headSchema('check'),
    findings: z.array(findingSchema),
    movedToLayers: z.array(snapSchema),
    drawingNotes: z.array(z.strictObject({ x_m: z.number(), y_m: z.number(), say: z.string() })),
    weatherNotes: z.array(z.strictObject({ code: z.string(), at: z.string(), say: z.string() })),
    assumed: z
      .array(z.strictObject({ at: z.string(), value: z.string(), source: z.string(), why: z.string() }))
      .optional()
      .meta({ description: 'With --assumed: every default in use, its value with its unit' }),
  })
  .meta({ title: 'Findings of a job' })

export const checkReport = (
  plan: Plan,
  opened: OpenedJob,
  withAssumed: boolean,
): z.infer<typeof checkReportSchema> => ({
  ...reportHead('check'),
  findings: plan.findings.map(findingReport),
  movedToLayers: plan.snaps.map(snapReport),
  drawingNotes: opened.notes.map(({ point, say }) => ({ x_m: point[0], y_m: point[1], say })),
  weatherNotes: opened.weatherNotes.map(({ code, at, say }: Problem) => ({ code, at, say })),
  ...(withAssumed
    ? { assumed: opened.assumed.map(({ at, value, source, why }) => ({ at, value, source, why })) }
    : {}),
})
