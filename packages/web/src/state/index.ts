export type { JobFiles } from './job-files.js'
export { fetchJob, keptDocument } from './keeping.js'
export type { AppActions, AppState, Saved } from './store.js'
export { useApp } from './store.js'
