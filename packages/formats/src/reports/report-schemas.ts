import { z } from 'zod'
import { planReportSchema } from '../plan-report/index.js'
import { checkReportSchema } from './check-report.js'
import { estimateReportSchema } from './estimate-report.js'
import { explainReportSchema } from './explain-report.js'
import { fitReportSchema } from './fit-report.js'
import { forecastReportSchema } from './forecast-report.js'
import { inspectReportSchema } from './inspect-report.js'
import { leversReportSchema } from './levers-report.js'
import { logReportSchema } from './log-report.js'
import { riskReportSchema } from './risk-report.js'
import { shareReportSchema } from './share-report.js'
import { standReportSchema } from './stand-report.js'
import { trialsReportSchema } from './trials-report.js'
import { weatherReportSchema } from './weather-report.js'
import { weighReportSchema } from './weigh-report.js'

/** What each command prints with `--json`. */
export const reportSchemas = {
  check: checkReportSchema,
  estimate: estimateReportSchema,
  explain: explainReportSchema,
  fit: fitReportSchema,
  forecast: forecastReportSchema,
  inspect: inspectReportSchema,
  levers: leversReportSchema,
  log: logReportSchema,
  plan: planReportSchema,
  risk: riskReportSchema,
  share: shareReportSchema,
  stand: standReportSchema,
  trials: trialsReportSchema,
  weather: weatherReportSchema,
  weigh: weighReportSchema,
} as const

export type ReportedCommand = keyof typeof reportSchemas

export const isReportedCommand = (name: string): name is ReportedCommand => Object.hasOwn(reportSchemas, name)

/** For whoever reads a report with a program. */
export const reportJsonSchema = (command: ReportedCommand) => z.toJSONSchema(reportSchemas[command])
