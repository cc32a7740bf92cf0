import { type AnyLever, type LeverRow, type LeverTable, leverUnits } from '@dawnlift/core/campaign'
import { z } from 'zod'
import { momentText } from '../plan-report/index.js'
import { count } from './bare-number.js'
import { headSchema, reportHead } from './report-head.js'

const leverSchema = z.union([
  z.strictObject({ lever: z.string(), setting: z.number(), settingUnit: z.string() }),
  z.strictObject({ lever: z.literal('own'), name: z.string() }),
])

const rowSchema = z.strictObject({
  levers: z.array(leverSchema),
  printDays: count,
  finished: z.boolean(),
  finish: z.iso.datetime(),
  finishDate: z.iso.date().optional().meta({ description: 'Local date of the site; absent: no print day' }),
  daysGained: z.int().meta({ description: 'Calendar days sooner than as planned; negative: later' }),
  printTime_s: z.number(),
  siteTime_s: z.number(),
  lifts: count,
  bindsNext: z.string().optional().meta({ description: 'The limit that then stops most layers' }),
})

/** What `dawnlift levers --json` prints. */
export const leversReportSchema = z
  .strictObject({
    ...headSchema('levers'),
    asPlanned: rowSchema,
    rows: z.array(rowSchema).meta({ description: 'Soonest finish first' }),
    bestPair: rowSchema.optional(),
  })
  .meta({ title: 'What would buy days' })

export const leversReport = ({
  asPlanned,
  rows,
  bestPair,
}: LeverTable): z.infer<typeof leversReportSchema> => ({
  ...reportHead('levers'),
  asPlanned: rowReport(asPlanned),
  rows: rows.map(rowReport),
  ...(bestPair ? { bestPair: rowReport(bestPair) } : {}),
})

const rowReport = ({
  levers,
  finish,
  finishDate,
  printTime,
  siteTime,
  ...row
}: LeverRow): z.infer<typeof rowSchema> => ({
  levers: levers.map(leverReport),
  printDays: row.printDays,
  finished: row.finished,
  finish: momentText(finish),
  ...(finishDate === '' ? {} : { finishDate }),
  daysGained: row.daysGained,
  printTime_s: printTime,
  siteTime_s: siteTime,
  lifts: row.lifts,
  ...(row.bindsNext === undefined ? {} : { bindsNext: row.bindsNext }),
})

const leverReport = (lever: AnyLever): z.infer<typeof leverSchema> =>
  lever.kind === 'own'
    ? { lever: 'own', name: lever.name }
    : { lever: lever.kind, setting: lever.setting, settingUnit: leverUnits[lever.kind] }
