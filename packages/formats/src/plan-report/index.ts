export { planReport } from './plan-report.js'
export { type PlanReport, planJsonSchema, planReportSchema } from './report-schema.js'
