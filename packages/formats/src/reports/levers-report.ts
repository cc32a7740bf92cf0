import type { Job } from '@dawnlift/core/job'
import { type JobLever, jobLeverFacts, sayJobLever } from '@dawnlift/core/lever'
import type { Plan } from '@dawnlift/core/plan'
import { z } from 'zod'
import type { DoubtedLevers, DoubtedRow, DoubtedSets } from '../job-folder/index.js'
import { momentText } from '../plan-report/index.js'
import { count, factor, share } from './bare-number.js'
import { headSchema, reportHead } from './report-head.js'

const money = z.number().meta({ description: 'Money, in the currency told beside' })
const dateOrLater = z.iso.date().nullable().meta({ description: 'Null: later than the weather reaches' })

const leverSchema = z.strictObject({
  lever: z.string(),
  setting: z.number(),
  settingUnit: z.string(),
  say: z.string(),
})

const rowSchema = z.strictObject({
  levers: z.array(leverSchema),
  sections: count,
  printDays: count,
  finished: z.boolean(),
  finishDate: z.iso.date().optional().meta({ description: 'Local date of the site; absent: no print day' }),
  gained_d: z
    .int()
    .optional()
    .meta({ description: 'Calendar days sooner than as planned; negative: later; absent: one is not up' }),
  printTime_s: z.number(),
  siteTime_s: z.number(),
  lifts: count,
  volume_m3: z.number(),
  leastSafety: factor('smallest standing capacity over demand of any lift: a screening value'),
  cost: money,
  costMore: money,
  unpriced: z.array(z.string()).meta({ description: 'Needed besides, without a price' }),
  bindsNext: z.string().optional().meta({ description: 'The limit that then stops most layers' }),
  upBy: z
    .array(
      z.strictObject({
        share: share('replays that are up by the date'),
        date: dateOrLater,
        from: dateOrLater,
        to: dateOrLater,
      }),
    )
    .optional()
    .meta({ description: 'How sure; every row meets the same weather and mishaps' }),
})

const setsSchema = z.strictObject({
  possible: count,
  planned: count.meta({ description: 'The others could not be better, by their bound, or do not apply' }),
  best: rowSchema.optional(),
})

/** What `dawnlift levers --json` prints. */
export const leversReportSchema = z
  .strictObject({
    ...headSchema('levers'),
    currency: z.string(),
    asOf: z.iso
      .datetime()
      .optional()
      .meta({ description: 'Of a job begun: days, lifts and costs are of what is left from then on' }),
    replays: count,
    weather: z.string(),
    asPlanned: rowSchema,
    rows: z.array(rowSchema).meta({ description: 'One lever each, soonest finish first, then cheapest' }),
    pairs: setsSchema.optional(),
    triples: setsSchema.optional(),
    without: z.array(z.string()).meta({ description: 'Levers that do not apply to this job' }),
    assumes: z.record(z.string(), z.string()).meta({ description: 'What each lever takes for granted' }),
  })
  .meta({ title: 'What would buy days' })

export function leversReport(
  table: DoubtedLevers,
  { job, soFar }: Pick<Plan, 'job' | 'soFar'>,
): z.infer<typeof leversReportSchema> {
  const row = (of: DoubtedRow) => rowReport(of, job)
  const sets = ({ best, ...counts }: DoubtedSets) => ({ ...counts, ...(best ? { best: row(best) } : {}) })
  const kinds = new Set(table.rows.flatMap(({ levers }) => levers.map(lever => lever.kind)))
  return {
    ...reportHead('levers'),
    currency: job.costs.currency,
    ...(soFar ? { asOf: momentText(soFar.now) } : {}),
    replays: table.replays,
    weather: table.weather,
    asPlanned: row(table.asPlanned),
    rows: table.rows.map(row),
    ...(table.pairs ? { pairs: sets(table.pairs) } : {}),
    ...(table.triples ? { triples: sets(table.triples) } : {}),
    without: [...table.without],
    assumes: Object.fromEntries([...kinds].map(kind => [kind, jobLeverFacts[kind].assumes])),
  }
}

function rowReport(
  { levers, finishDate, daysGained, printTime, siteTime, volume, sure, bindsNext, ...row }: DoubtedRow,
  job: Job,
): z.infer<typeof rowSchema> {
  return {
    levers: levers.map(lever => leverReport(lever, job)),
    sections: row.sections,
    printDays: row.printDays,
    finished: row.finished,
    ...(finishDate === '' ? {} : { finishDate }),
    ...(daysGained === undefined ? {} : { gained_d: daysGained }),
    printTime_s: printTime,
    siteTime_s: siteTime,
    lifts: row.lifts,
    volume_m3: volume,
    leastSafety: row.leastSafety,
    cost: row.cost,
    costMore: row.costMore,
    unpriced: [...row.unpriced],
    ...(bindsNext === undefined ? {} : { bindsNext }),
    ...(sure
      ? {
          upBy: sure.map(({ share, date, between: [from, to] }) => ({
            share,
            date: date ?? null,
            from: from ?? null,
            to: to ?? null,
          })),
        }
      : {}),
  }
}

const leverReport = (lever: JobLever, job: Job): z.infer<typeof leverSchema> => ({
  lever: lever.kind,
  setting: lever.setting,
  settingUnit: jobLeverFacts[lever.kind].unit,
  say: sayJobLever(lever, job.units),
})
