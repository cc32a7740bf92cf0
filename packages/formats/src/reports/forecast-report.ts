import { z } from 'zod'
import { momentText } from '../plan-report/index.js'
import type { Forecast } from '../weather/index.js'
import { count } from './bare-number.js'
import { headSchema, reportHead } from './report-head.js'

const noteSchema = z.strictObject({ code: z.string(), at: z.string(), say: z.string() })

/** What `dawnlift forecast --json` prints. */
export const forecastReportSchema = z
  .strictObject({
    ...headSchema('forecast'),
    file: z.string(),
    from: z.enum(['service', 'store']),
    fetchedAt: z.iso.datetime(),
    age_s: z.number(),
    firstHour: z.iso.datetime(),
    lastHour: z.iso.datetime(),
    hours: count,
    say: z.string(),
    assumed: z.array(z.strictObject({ what: z.string(), hours: count, source: z.string() })),
    notes: z.array(noteSchema),
  })
  .meta({ title: 'The forecast beside a job' })

export const forecastReport = (file: string, forecast: Forecast): z.infer<typeof forecastReportSchema> => ({
  ...reportHead('forecast'),
  file,
  from: forecast.from,
  fetchedAt: momentText(forecast.fetchedAt),
  age_s: forecast.ageSeconds,
  firstHour: momentText(forecast.hours[0]?.start ?? forecast.fetchedAt),
  lastHour: momentText(forecast.hours.at(-1)?.start ?? forecast.fetchedAt),
  hours: forecast.hours.length,
  say: forecast.say,
  assumed: forecast.assumed.map(({ what, hours, source }) => ({ what, hours, source })),
  notes: forecast.warnings.map(({ code, at, say }) => ({ code, at, say })),
})
