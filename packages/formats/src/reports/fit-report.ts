import type { MixFit } from '@dawnlift/core/mix'
import { z } from 'zod'
import { curveReport, curveSchema } from './curve-report.js'
import {
  stiffnessGrowthReport,
  stiffnessGrowthSchema,
  strengthGrowthReport,
  strengthGrowthSchema,
  yieldGrowthReport,
  yieldGrowthSchema,
} from './growth-report.js'
import { mixReport, mixSchema } from './mix-report.js'
import { headSchema, reportHead } from './report-head.js'

const words = z.array(z.string())

/** What `dawnlift fit --json` prints. */
export const fitReportSchema = z
  .strictObject({
    ...headSchema('fit'),
    mix: mixSchema,
    yield: curveSchema(yieldGrowthSchema),
    stiffness: curveSchema(stiffnessGrowthSchema).optional(),
    strength: curveSchema(strengthGrowthSchema).optional(),
    setting: z.strictObject({ initial_s: z.number(), final_s: z.number() }).optional(),
    activation: z.strictObject({
      value_K: z.number(),
      standardError_K: z.number().optional(),
      fitted: z.boolean(),
      say: z.string(),
    }),
    assumed: words,
    cautions: words,
    outliers: words,
    leftOut: words,
  })
  .meta({ title: 'A mix fitted to its tests' })

export const fitReport = (fit: MixFit): z.infer<typeof fitReportSchema> => ({
  ...reportHead('fit'),
  mix: mixReport(fit.mix),
  yield: curveReport(fit.yield, yieldGrowthReport),
  ...(fit.stiffness ? { stiffness: curveReport(fit.stiffness, stiffnessGrowthReport) } : {}),
  ...(fit.strength ? { strength: curveReport(fit.strength, strengthGrowthReport) } : {}),
  ...(fit.setting ? { setting: { initial_s: fit.setting.initial, final_s: fit.setting.final } } : {}),
  activation: activationReport(fit.activation),
  assumed: [...fit.assumed],
  cautions: [...fit.cautions],
  outliers: [...fit.outliers],
  leftOut: [...fit.leftOut],
})

const activationReport = ({ value, standardError, fitted, say }: MixFit['activation']) => ({
  value_K: value,
  ...(standardError === undefined ? {} : { standardError_K: standardError }),
  fitted,
  say,
})
