import type { Way } from '@dawnlift/core/lever'
import type { Plan } from '@dawnlift/core/plan'
import { z } from 'zod'
import { momentText } from '../plan-report/index.js'
import { count, factor } from './bare-number.js'
import { headSchema, reportHead } from './report-head.js'

const aimSchema = z.enum(['soonest', 'cheapest', 'calmest'])

const waySchema = z.strictObject({
  lookedForBy: aimSchema,
  ledToBy: z.array(aimSchema).meta({ description: 'Aims of the job under which it is planned this way' }),
  finishDate: z.iso.date().meta({ description: 'Local date of the site' }),
  cost: z.number().meta({ description: 'Money, in the currency told beside' }),
  printDays: count,
  lifts: count,
  siteTime_s: z.number(),
  leastSafety: factor('smallest standing capacity over demand of any lift: a screening value'),
  isPlanned: z.boolean().meta({ description: 'The plan as it stands' }),
  isWorthwhile: z
    .boolean()
    .meta({ description: 'No other way is as good in everything and better in something' }),
})

/** What `dawnlift weigh --json` prints. */
export const weighReportSchema = z
  .strictObject({
    ...headSchema('weigh'),
    currency: z.string(),
    asOf: z.iso
      .datetime()
      .optional()
      .meta({ description: 'Of a job begun: days, lifts and costs are of what is left from then on' }),
    ways: z
      .array(waySchema)
      .meta({ description: 'Soonest first; none where the job is not up in the weather known' }),
  })
  .meta({ title: 'What waiting would buy' })

export const weighReport = (
  ways: readonly Way[],
  { job, soFar }: Pick<Plan, 'job' | 'soFar'>,
): z.infer<typeof weighReportSchema> => ({
  ...reportHead('weigh'),
  currency: job.costs.currency,
  ...(soFar ? { asOf: momentText(soFar.now) } : {}),
  ways: ways.map(way => ({
    lookedForBy: way.aim,
    ledToBy: [...way.ledToBy],
    finishDate: way.date,
    cost: way.cost,
    printDays: way.printDays,
    lifts: way.lifts,
    siteTime_s: way.siteTime,
    leastSafety: way.safety,
    isPlanned: way.isPlanned,
    isWorthwhile: way.isWorthwhile,
  })),
})
