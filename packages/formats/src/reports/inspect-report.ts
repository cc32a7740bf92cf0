import { z } from 'zod'
import type { RunSummary } from '../rs274/index.js'
import { count, share } from './bare-number.js'
import { headSchema, reportHead } from './report-head.js'

const metres = z.number()
const optional = z.number().optional()

const extentsSchema = z.strictObject({
  xFrom_m: metres,
  xTo_m: metres,
  yFrom_m: metres,
  yTo_m: metres,
  zFrom_m: metres,
  zTo_m: metres,
})

/** What `dawnlift inspect --json` prints. */
export const inspectReportSchema = z
  .strictObject({
    ...headSchema('inspect'),
    fileUnits: z.enum(['mm', 'in']),
    lines: count,
    extents: extentsSchema.optional().meta({ description: 'Of what is laid; absent: nothing is' }),
    bead_m: z.number(),
    volume_m3: optional,
    feedTime_s: z.number().meta({ description: 'Under feed words alone' }),
    plannedTime_s: optional,
    overfill: z
      .strictObject({
        volume_m3: z.number(),
        share: share('of what setting and feed ask for'),
        worstLine: count,
        worstX_m: z.number(),
        worstY_m: z.number(),
        worstVolume_m3: z.number(),
      })
      .optional()
      .meta({ description: 'Laid too much where the nozzle brakes; with --job only' }),
    starts: count,
    stops: z.array(z.strictObject({ line: count, message: z.string().optional() })),
    layers: z.array(
      z.strictObject({
        z_m: z.number(),
        bead_m: z.number(),
        volume_m3: optional,
        feedTime_s: z.number(),
        plannedTime_s: optional,
        starts: count,
      }),
    ),
    pumpOn: z.array(z.strictObject({ fromLine: count, toLine: count, bead_m: z.number() })),
    headingRateMost_rad_per_s: z.number(),
    headingFrom_rad: optional,
    headingTo_rad: optional,
    notes: z.array(z.strictObject({ line: count, say: z.string() })),
  })
  .meta({ title: 'A machine file in numbers' })

export const inspectReport = (run: RunSummary): z.infer<typeof inspectReportSchema> => ({
  ...reportHead('inspect'),
  fileUnits: run.units,
  lines: run.lines,
  ...(run.extents ? { extents: extentsReport(run.extents) } : {}),
  ...laidReport(run),
  ...(run.overfill ? { overfill: overfillReport(run.overfill) } : {}),
  stops: run.stops.map(({ line, message }) => ({ line, ...(message === undefined ? {} : { message }) })),
  layers: run.layers.map(layer => ({ z_m: layer.z, ...laidReport(layer) })),
  pumpOn: run.pumpOn.map(({ fromLine, toLine, length }) => ({ fromLine, toLine, bead_m: length })),
  headingRateMost_rad_per_s: run.headingRateMost,
  ...(run.headingRange ? { headingFrom_rad: run.headingRange[0], headingTo_rad: run.headingRange[1] } : {}),
  notes: run.notes.map(({ line, say }) => ({ line, say })),
})

const extentsReport = ({ x, y, z }: NonNullable<RunSummary['extents']>) => ({
  xFrom_m: x[0],
  xTo_m: x[1],
  yFrom_m: y[0],
  yTo_m: y[1],
  zFrom_m: z[0],
  zTo_m: z[1],
})

const overfillReport = ({ volume, share: ofAll, worst }: NonNullable<RunSummary['overfill']>) => ({
  volume_m3: volume,
  share: ofAll,
  worstLine: worst.line,
  worstX_m: worst.x,
  worstY_m: worst.y,
  worstVolume_m3: worst.volume,
})

const laidReport = (laid: Pick<RunSummary, 'length' | 'volume' | 'feedTime' | 'plannedTime' | 'starts'>) => ({
  bead_m: laid.length,
  ...(laid.volume === undefined ? {} : { volume_m3: laid.volume }),
  feedTime_s: laid.feedTime,
  ...(laid.plannedTime === undefined ? {} : { plannedTime_s: laid.plannedTime }),
  starts: laid.starts,
})
