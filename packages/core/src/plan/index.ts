export { campaignInput } from './campaign-input.js'
export type { LiftCure, Plan } from './plan.js'
export { newPlanCache, type PlanCache } from './plan-cache.js'
export {
  type PlanInput,
  type PlanOptions,
  planJob,
  type Stage,
  stageWords,
} from './plan-job.js'
export { daysToCome, restOfPlan } from './rest-of-plan.js'
export { sampledBeadLength } from './sample-wall.js'
export { hourAt, sitePhysics } from './site-physics.js'
export { wholeSection } from './whole-section.js'
