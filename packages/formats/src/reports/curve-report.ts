import type { CurveFit } from '@dawnlift/core/mix'
import { z } from 'zod'
import { count, factor, share } from './bare-number.js'

/** A fitted curve with everything needed to draw and to doubt it; all stresses in Pa. */
export const curveSchema = <Growth extends z.ZodType>(growth: Growth) =>
  z.strictObject({
    kind: z.string(),
    growth,
    lower: growth,
    upper: growth,
    parameters: z.array(
      z.strictObject({
        name: z.string(),
        value: z.number(),
        standardError: z.number().optional(),
        unit: z.string().meta({ description: 'Unit of value and standardError' }),
      }),
    ),
    scatter: share('scatter of the tests about the curve'),
    points: z.array(
      z.strictObject({
        at: z.string(),
        age_s: z.number(),
        measured_Pa: z.number(),
        fitted_Pa: z.number(),
        residual: factor('ln of measured over fitted'),
        studentised: factor('residual over its own expected scatter'),
      }),
    ),
    band: z.array(
      z.strictObject({
        age_s: z.number(),
        fitted_Pa: z.number(),
        lower_Pa: z.number(),
        upper_Pa: z.number(),
      }),
    ),
    candidates: z.array(
      z.strictObject({
        kind: z.string(),
        parameters: count,
        aicc: factor('corrected information criterion, less is better').optional(),
        weight: share('evidence among those tried'),
      }),
    ),
    why: z.string(),
    outliers: z.array(z.string()),
  })

export function curveReport<Growth, Told>(curve: CurveFit<Growth>, tell: (growth: Growth) => Told) {
  return {
    kind: curve.kind,
    growth: tell(curve.growth),
    lower: tell(curve.lower),
    upper: tell(curve.upper),
    parameters: curve.parameters.map(each => ({ ...each })),
    scatter: curve.scatter,
    points: curve.points.map(({ age, measured, fitted, ...point }) => ({
      at: point.at,
      age_s: age,
      measured_Pa: measured,
      fitted_Pa: fitted,
      residual: point.residual,
      studentised: point.studentised,
    })),
    band: curve.band.map(({ age, fitted, lower, upper }) => ({
      age_s: age,
      fitted_Pa: fitted,
      lower_Pa: lower,
      upper_Pa: upper,
    })),
    candidates: curve.candidates.map(each => ({ ...each })),
    why: curve.why,
    outliers: [...curve.outliers],
  }
}
