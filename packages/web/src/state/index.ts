export type { Doubt, DoubtedLevers, DoubtWishes } from '@dawnlift/formats/job-folder'
export type { JobFiles } from './job-files.js'
export { fetchJob, sendLater } from './keeping.js'
export { orphanedEdit } from './kept-edits.js'
export type { LiftMove } from './moved-lift.js'
export { cancelPlanning, followBands, type Progress } from './planner.js'
export { askDoubt, askLevers, askMove, askShells, askTradeOffs, stopAsking } from './replanner.js'
export { keepMine, takeTheirs, watchServer } from './sharing.js'
export type { AppActions, AppState, Saved } from './store.js'
export { isNewer, useApp } from './store.js'
export { keptFiles } from './unsent-files.js'
export {
  forgetEntry,
  keepEntry,
  servedLog,
  strikeEntry,
  type UnsentEntry,
  unsentEntries,
} from './unsent-log.js'
