export type { LeverSets } from './best-set.js'
export type { JobLever, JobLeverFacts, JobLeverKind } from './job-lever.js'
export { isJobLeverKind, jobLeverFacts, jobLeverKinds, sayJobLever, sayJobLevers } from './job-lever.js'
export { jobLeverSettings, type LeverScene } from './job-lever-settings.js'
export { type LeverBench, type LeveredJob, type LeverGround, leverBench } from './lever-bench.js'
export type { JobLeverRow, LeverPrice, LeverPrices } from './lever-row.js'
export { compareLeverRows } from './lever-row.js'
export { type PulledJob, pullJobLever } from './pull-job-lever.js'
export {
  type JobLeverTable,
  type LeverOptions,
  type LeverStage,
  leverStageWords,
  tryJobLevers,
} from './try-job-levers.js'
export { type Way, waysOf } from './ways.js'
