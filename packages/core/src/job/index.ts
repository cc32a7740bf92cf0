export type { Costs } from './costs.js'
export type { Inspection, Job, ManualSection } from './job.js'
export type { Aim, ClosedPin, LiftPin, Pin } from './pin.js'
export type { Batching, Calendar, Crew, PermittedHours, Rules, RuleValue, Site } from './site.js'
export type {
  Column,
  Embed,
  EmbedKind,
  MakeUp,
  Opening,
  PrintRules,
  Relief,
  Trade,
  Wall,
  WebPattern,
} from './wall.js'
