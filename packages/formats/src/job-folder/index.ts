export type { Assumed } from '@dawnlift/document/job'
export { horizonDays } from './job-weather.js'
export { type JobSource, type OpenedJob, openJob } from './open-job.js'
