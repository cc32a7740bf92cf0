export type {
  Campaign,
  Hold,
  IdleDay,
  Lift,
  LiftEnd,
  LiftPhysics,
  LiftTrial,
  NextGain,
  PrintDay,
  SectionWork,
} from './campaign.js'
export type { CampaignChange } from './campaign-change.js'
export { changesBetween } from './campaign-change.js'
export { campaignFindings } from './campaign-findings.js'
export type { CampaignInput, Deliveries, SectionStanding } from './campaign-input.js'
export { checkCampaign } from './check-campaign.js'
export { checkCampaignInput } from './check-input.js'
export { alignLiftEnds } from './close-lift-ends.js'
export { chanceInterval } from './confidence.js'
export type { BidDriver, BidEstimate, BidFactor, BidInput, Spread } from './estimate-job.js'
export { estimateJob } from './estimate-job.js'
export type { BidCost, BidCostInput } from './estimate-job-cost.js'
export { estimateCost } from './estimate-job-cost.js'
export { explainLift, explainRunnersUp, limitName, sayGain, sayLever } from './explain-lift.js'
export type { Effort } from './find-campaign.js'
export { formulas } from './formulas.js'
export { holdDays } from './hold-days.js'
export type { KnownGains, LayerGain } from './known-gains.js'
export type { Lever, LeverKind } from './lever.js'
export { leverSettings, leversFor, leverUnits, pullLever } from './lever.js'
export type { LeastCampaign } from './lever-schedule.js'
export { leastCampaign, scheduleLevered } from './lever-schedule.js'
export { mostBinding } from './most-binding.js'
export type { BrokenPin, MovedLift } from './move-lift.js'
export { brokenPins, moveLift } from './move-lift.js'
export type { Draw } from './random-draws.js'
export { countedDraws } from './random-draws.js'
export type { AsBuilt, Replanned } from './replan.js'
export { holdRest, replan } from './replan.js'
export type {
  CampaignRisk,
  FinishQuantile,
  LostCause,
  LostDays,
  MishapRates,
  ReplayOptions,
  ReplayYear,
} from './replay-campaign.js'
export { replayCampaign, replayRuns, riskOf } from './replay-campaign.js'
export type { ReplayedRun } from './replay-once.js'
export { scheduleCampaign } from './schedule-campaign.js'
export type { TradeOff } from './trade-offs.js'
export { tradeOffs } from './trade-offs.js'
export { calendarDays } from './work-day.js'
