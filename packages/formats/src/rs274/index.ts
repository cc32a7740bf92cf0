export {
  type Extents,
  type InspectOptions,
  inspectRun,
  type LayerSummary,
  type RunSummary,
} from './inspect.js'
export type { LiftFile } from './lift-file.js'
export type { FeedMove, MachineRun, RapidMove, RunPoint, RunStep } from './machine-run.js'
export type { Overfill } from './overfill.js'
export { stepTimes } from './planned-time.js'
export { type ReadOptions, readMachineFile } from './read-machine-file.js'
export { type LiftWriter, liftWriter, writeLift, writeRestart } from './write-lift.js'
