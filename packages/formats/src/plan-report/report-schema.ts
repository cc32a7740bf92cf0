import { z } from 'zod'
import { cureSchema, pourSchema } from './keeping-report.js'

/** A moment, as ISO 8601 in UTC. */
const moment = z.iso.datetime()
const count = z.int().nonnegative()

const limit = z.strictObject({
  kind: z.string().meta({ description: 'What limits, such as mix-hot, buckling, shift' }),
  say: z.string().meta({ description: 'In words, in the units of the job' }),
  at: moment.optional(),
  asked: z.number(),
  allowed: z.number(),
  unit: z.string().meta({ description: 'Unit of asked and allowed' }),
  source: z.string(),
})

const gain = z.strictObject({
  lever: z.string(),
  setting: z.number(),
  settingUnit: z.string(),
  layers: count,
  days: z.number(),
  bindsNext: limit,
})

const lift = z.strictObject({
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
    .meta({ description: 'Capacity over demand: a screening value for a licensed engineer' }),
  pauseBudget_s: z.number(),
  why: z.string(),
  binding: limit,
  runnersUp: z.array(z.strictObject({ layers: z.number(), limit })),
  nextGain: gain.optional(),
})

const quantities = {
  bead_m: z.number(),
  volume_m3: z.number(),
  mass_kg: z.number(),
  dry_kg: z.number(),
  bags: z.number().meta({ description: 'Whole for a day and the job, a share of bags for a lift' }),
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
        lifts: z.array(lift),
      }),
    ),
    idleDays: z.array(z.strictObject({ date: z.iso.date(), why: limit })),
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
        cutFrom: moment.optional(),
        cutUntil: moment.optional(),
        cutInSteps: z
          .literal(true)
          .optional()
          .meta({ description: 'No one moment suits the whole cut: it is made as the wall grows' }),
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
      cost: z.array(z.strictObject({ what: z.string(), amount: z.number(), how: z.string() })),
      costTotal: z.number(),
      costPerWallFace_perM2: z.number(),
    }),
    movedToLayers: z.array(z.strictObject({ what: z.string(), asked_m: z.number(), got_m: z.number() })),
    findings: z.array(
      z.strictObject({
        check: z.string(),
        at: z.string(),
        x_m: z.number().optional(),
        y_m: z.number().optional(),
        demand: z.number(),
        capacity: z.number(),
        unit: z.string(),
        verdict: z.enum(['pass', 'warn', 'fail', 'outside-range']),
        source: z.string(),
        say: z.string(),
      }),
    ),
  })
  .meta({ title: 'A Dawnlift plan' })

export type PlanReport = z.infer<typeof planReportSchema>

/** For whoever reads the plan with a program. */
export const planJsonSchema = () => z.toJSONSchema(planReportSchema)
