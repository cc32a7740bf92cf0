export type { Assumed } from '@dawnlift/document/job'
export { type Bid, type BidGiven, bidOf } from './bid-of.js'
export {
  type Chance,
  type Doubt,
  type DoubtShare,
  type DoubtWishes,
  doubtFrom,
  doubtOf,
  doubtReplays,
  doubtRuns,
  type StandingPlan,
} from './campaign-doubt.js'
export {
  type DoubtedLevers,
  type DoubtedOptions,
  type DoubtedRow,
  type DoubtedSets,
  type DoubtedStage,
  leversOf,
} from './campaign-doubt-levers.js'
export { horizonDays } from './job-weather.js'
export { type JobSource, type OpenedJob, openJob } from './open-job.js'
export { type SiteBuilding, siteOf } from './site-of.js'
export { type WeatherYear, type WeatherYears, weatherYears } from './weather-years.js'
