import type { MishapRates } from '@dawnlift/core/campaign'
import { z } from 'zod'
import type { Doubt, DoubtWishes } from '../job-folder/index.js'
import { count, share } from './bare-number.js'
import { headSchema, reportHead } from './report-head.js'

const date = z.iso.date()
const dateOrLater = date.nullable().meta({ description: 'Null: later than the weather reaches' })

/** What `dawnlift risk --json` prints. */
export const riskReportSchema = z
  .strictObject({
    ...headSchema('risk'),
    weather: z.string(),
    caution: z.string(),
    replays: count,
    finished: count.meta({ description: 'Replays that were up before their weather ended' }),
    mishaps: z.strictObject({
      breakdowns_per_h: z.number().meta({ description: 'Of printing' }),
      repair_h: z.number(),
      late: share('days on which the mix comes late'),
      late_h: z.number().meta({ description: 'How late it comes on average' }),
    }),
    planned: date,
    chance: share('replays that are up by the planned date'),
    chanceFrom: share('lower end of its 95 % interval'),
    chanceTo: share('upper end of its 95 % interval'),
    asked: z
      .strictObject({
        date,
        chance: share('replays that are up by the date asked for'),
        chanceFrom: share('lower end of its 95 % interval'),
        chanceTo: share('upper end of its 95 % interval'),
      })
      .optional(),
    contingency: z
      .array(
        z.strictObject({
          share: share('how sure'),
          days_d: z.int().optional().meta({ description: 'Absent: later than the weather reaches' }),
        }),
      )
      .meta({ description: 'Calendar days after the planned date' }),
    upBy: z.array(
      z.strictObject({
        share: share('replays that are up by the date'),
        date: dateOrLater,
        from: dateOrLater,
        to: dateOrLater,
      }),
    ),
    lost: z.array(
      z.strictObject({
        cause: z.string(),
        lost_d: z.number().meta({ description: 'Working days without a layer, mean of a replay' }),
        within_d: z
          .number()
          .nullable()
          .meta({ description: 'Half its 95 % interval; null: a single replay tells nothing' }),
      }),
    ),
    finishes: z.array(dateOrLater),
  })
  .meta({ title: 'How sure a finish is' })

export const riskReport = ({ rates }: DoubtWishes, doubt: Doubt): z.infer<typeof riskReportSchema> => ({
  ...reportHead('risk'),
  weather: doubt.weather,
  caution: doubt.caution,
  replays: doubt.replays,
  finished: doubt.finished,
  mishaps: mishapReport(rates),
  planned: doubt.planned,
  chance: doubt.chance.chance,
  chanceFrom: doubt.chance.between[0],
  chanceTo: doubt.chance.between[1],
  ...(doubt.by
    ? {
        asked: {
          date: doubt.by.date,
          chance: doubt.by.chance,
          chanceFrom: doubt.by.between[0],
          chanceTo: doubt.by.between[1],
        },
      }
    : {}),
  contingency: doubt.contingency.map(({ share, days }) =>
    days === undefined ? { share } : { share, days_d: days },
  ),
  upBy: doubt.quantiles.map(({ share, date, between: [from, to] }) => ({
    share,
    date: date ?? null,
    from: from ?? null,
    to: to ?? null,
  })),
  lost: doubt.lost.map(({ cause, days, within }) => ({
    cause,
    lost_d: days,
    within_d: Number.isFinite(within) ? within : null,
  })),
  finishes: doubt.finishes.map(each => each ?? null),
})

const mishapReport = ({ breakdownsPerHour, repairHours, lateChance, lateHours }: MishapRates) => ({
  breakdowns_per_h: breakdownsPerHour,
  repair_h: repairHours,
  late: lateChance,
  late_h: lateHours,
})
