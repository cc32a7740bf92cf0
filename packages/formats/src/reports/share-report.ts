import type { Finding } from '@dawnlift/core/result'
import type { SharedSite, SiteCampaign } from '@dawnlift/core/site-campaign'
import { z } from 'zod'
import { findingReport, findingSchema, momentText } from '../plan-report/index.js'
import { count } from './bare-number.js'
import { headSchema, reportHead } from './report-head.js'

const moment = z.iso.datetime()

const siteCampaignSchema = z.strictObject({
  finished: z.boolean(),
  finishDate: z.iso.date().optional(),
  moves: count,
  visits: z.array(
    z.strictObject({
      building: z.string(),
      date: z.iso.date(),
      moveStart: moment.optional().meta({ description: 'Absent: the machine stood there already' }),
      start: moment.meta({ description: 'Set-up begins' }),
      end: moment.meta({ description: 'Wash-out ends' }),
      lifts: z.array(
        z.strictObject({
          id: z.string(),
          firstLayer: count,
          lastLayer: count,
          start: moment,
          end: moment,
          volume_m3: z.number(),
        }),
      ),
    }),
  ),
})

/** What `dawnlift share --json` prints. */
export const shareReportSchema = z
  .strictObject({
    ...headSchema('share'),
    site: z.string(),
    move_s: z.number(),
    shared: siteCampaignSchema,
    oneAfterOther: siteCampaignSchema,
    gained_d: z.int().optional().meta({ description: 'Calendar days the whole site is up sooner' }),
    bound: z.iso.date().optional().meta({ description: 'No way of sharing is up before' }),
    findings: z.array(findingSchema).meta({
      description:
        'What fails: of each job, reach among it, and of the checker that shares no code with the planner',
    }),
  })
  .meta({ title: 'Buildings that share machine and crew' })

export const shareReport = (
  site: string,
  move: number,
  { shared, oneAfterOther, daysGained, bound }: SharedSite,
  findings: readonly Finding[],
): z.infer<typeof shareReportSchema> => ({
  ...reportHead('share'),
  site,
  move_s: move,
  shared: siteReport(shared),
  oneAfterOther: siteReport(oneAfterOther),
  ...(daysGained === undefined ? {} : { gained_d: daysGained }),
  ...(bound === undefined ? {} : { bound }),
  findings: findings.map(findingReport),
})

const siteReport = ({
  finished,
  finishDate,
  moves,
  visits,
}: SiteCampaign): z.infer<typeof siteCampaignSchema> => ({
  finished,
  ...(finishDate === '' ? {} : { finishDate }),
  moves,
  visits: visits.map(({ building, date, moveStart, start, end, lifts }) => ({
    building,
    date,
    ...(moveStart === undefined ? {} : { moveStart: momentText(moveStart) }),
    start: momentText(start),
    end: momentText(end),
    lifts: lifts.map(lift => ({
      id: lift.id,
      firstLayer: lift.firstLayer,
      lastLayer: lift.lastLayer,
      start: momentText(lift.start),
      end: momentText(lift.end),
      volume_m3: lift.volume,
    })),
  })),
})
