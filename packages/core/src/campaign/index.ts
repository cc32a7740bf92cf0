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
export type { CampaignInput, Deliveries, SectionStanding } from './campaign-input.js'
export { checkCampaign } from './check-campaign.js'
export type { Effort } from './schedule-campaign.js'
export { scheduleCampaign } from './schedule-campaign.js'
