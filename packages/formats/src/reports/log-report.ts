import type { Plan } from '@dawnlift/core/plan'
import { z } from 'zod'
import { momentText } from '../plan-report/index.js'
import { headSchema, reportHead } from './report-head.js'

const moment = z.iso.datetime()
const count = z.int().nonnegative()

/** What `dawnlift log --json` prints. */
export const logReportSchema = z
  .strictObject({
    ...headSchema('log'),
    now: moment.optional().meta({ description: 'The last event of the log; absent before the first' }),
    standing: z.array(
      z.strictObject({
        section: z.string(),
        layers: count,
        ofLayers: count,
        lifts: count,
        lastLayerDown: moment.optional(),
      }),
    ),
    stops: z.array(z.strictObject({ cause: z.string(), times: count, stopped_s: z.number() })),
    keptAsTold: z.boolean().meta({ description: 'Whether the days told before were kept as far as they go' }),
    tell: z.array(
      z.strictObject({
        who: z.string(),
        ref: z.string(),
        section: z.string(),
        change: z.enum(['moved', 'taller', 'shorter', 'new', 'dropped']),
        from: moment.optional(),
        to: moment.optional(),
        say: z.string(),
      }),
    ),
    finish: moment,
    finished: z.boolean(),
  })
  .meta({ title: 'What stands, and what has changed for whom' })

export function logReport(plan: Plan): z.infer<typeof logReportSchema> {
  const { soFar, campaign, sections, bands } = plan
  return {
    ...reportHead('log'),
    ...(soFar ? { now: momentText(soFar.now) } : {}),
    standing: sections.map(({ id }, i) => {
      const stands = soFar?.standing.find(one => one.section === id)
      return {
        section: id,
        layers: stands?.layers ?? 0,
        ofLayers: bands[i]?.layers ?? 0,
        lifts: stands?.lifts ?? 0,
        ...(stands?.lastEnd === undefined ? {} : { lastLayerDown: momentText(stands.lastEnd) }),
      }
    }),
    stops: (soFar?.lost ?? []).map(({ cause, times, seconds }) => ({ cause, times, stopped_s: seconds })),
    keptAsTold: soFar?.kept ?? true,
    tell: (soFar?.changes ?? []).map(({ who, ref, section, kind, from, to, say }) => ({
      who,
      ref,
      section,
      change: kind,
      ...(from === undefined ? {} : { from: momentText(from) }),
      ...(to === undefined ? {} : { to: momentText(to) }),
      say,
    })),
    finish: momentText(campaign.finish),
    finished: campaign.finished,
  }
}
