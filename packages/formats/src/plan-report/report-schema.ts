import { z } from 'zod'
import { findingSchema, snapSchema } from './finding-report.js'
import { cureSchema, pourSchema } from './keeping-report.js'
import { liftSchema } from './lift-report.js'
import { limitSchema } from './limit-report.js'

/** A moment, as ISO 8601 in UTC. */
const moment = z.iso.datetime()
const count = z.int().nonnegative()

const money = z.number().meta({ description: 'Money, in the currency of the tally' })

const quantities = {
  bead_m: z.number(),
  volume_m3: z.number(),
  mass_kg: z.number(),
  dry_kg: z.number(),
  bags: z
    .number()
    .meta({ description: 'Number of bags: whole for a day and the job, with a fraction for a lift' }),
  water_kg: z.number(),
  printTime_s: z.number(),
}

/** What `dawnlift plan --json` prints. Every number carries its unit in its name or beside it. */
export const planReportSchema = z
  .strictObject({
    format: z.literal('dawnlift-plan'),
    version: z.literal(1),
    job: z.strictObject({
      name: z.string(),
      revision: z.string(),
      timeZone: z.string(),
      units: z.enum(['metric', 'imperial']),
    }),
    caution: z.string(),
    sections: z.array(
      z.strictObject({
        id: z.string(),
        layers: count,
        stretches: z.array(z.strictObject({ wall: z.string(), from_m: z.number(), to_m: z.number() })),
        joints: z.array(
          z.strictObject({ wall: z.string(), at_m: z.number(), kind: z.string(), of: z.string() }),
        ),
        bands: z.array(
          z.strictObject({
            fromLayer: count,
            toLayer: count,
            bodyArea_m2: z.number(),
            bead_m: z.number(),
            layerTime_s: z.number(),
            starts: count,
          }),
        ),
      }),
    ),
    finished: z.boolean(),
    leastPrintDays: count.meta({ description: 'No campaign can be shorter' }),
    leastBecause: z.string(),
    earliestFinish: z.iso.date().optional().meta({ description: 'No campaign can be up before' }),
    printDays: z.array(
      z.strictObject({
        number: count,
        date: z.iso.date(),
        start: moment,
        end: moment,
        chilledWater: z.boolean(),
        lifts: z.array(liftSchema),
      }),
    ),
    idleDays: z.array(z.strictObject({ date: z.iso.date(), why: limitSchema })),
    calls: z.array(
      z.strictObject({
        id: z.string(),
        trade: z.string(),
        what: z.string(),
        wall: z.string(),
        section: z.string(),
        lift: z.string(),
        date: z.iso.date(),
        layerIn: count,
        layerOut: count,
        from: moment,
        until: moment,
        tellBy: moment.optional().meta({ description: 'Notice to give to somebody who is not on site' }),
        cutFrom: moment.optional(),
        cutUntil: moment.optional(),
        cutInSteps: z
          .literal(true)
          .optional()
          .meta({ description: 'No one moment suits the whole cut: it is made as the wall grows' }),
        cutDoubt: z.enum(['none', 'unsure']).optional().meta({
          description: 'none: no clean cut at any moment; unsure: times of the best estimate, try first',
        }),
        measuredFrom: z.string(),
        along_m: z.number(),
        up_m: z.number(),
        face: z.string(),
        tool: z.string(),
        proof: z.string(),
      }),
    ),
    cure: z.array(cureSchema),
    pours: z.array(pourSchema),
    tally: z.strictObject({
      ...quantities,
      wallFace_m2: z.number(),
      byLift: z.array(z.strictObject({ lift: z.string(), date: z.iso.date(), ...quantities })),
      byDay: z.array(z.strictObject({ date: z.iso.date(), ...quantities })),
      currency: z.string(),
      cost: z.array(z.strictObject({ what: z.string(), amount: money, how: z.string() })),
      costTotal: money,
      costPerWallFace_perM2: money,
    }),
    movedToLayers: z.array(snapSchema),
    findings: z.array(findingSchema),
  })
  .meta({ title: 'A Dawnlift plan' })

export type PlanReport = z.infer<typeof planReportSchema>

/** For whoever reads the plan with a program. */
export const planJsonSchema = () => z.toJSONSchema(planReportSchema)
