export type { Output } from './output.js'
export { liftFile, type OutputStamp, outputsOf } from './outputs-of.js'
export { type Restart, restOfLift } from './rest-of-lift.js'
