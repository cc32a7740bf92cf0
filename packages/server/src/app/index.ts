export { buildServer, type ServerParts } from './build-server.js'
export { type Kept, type PlanKeeper, planKeeper } from './plan-keeper.js'
