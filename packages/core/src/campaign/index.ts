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
