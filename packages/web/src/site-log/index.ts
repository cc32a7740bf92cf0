export { checkLines } from './check-lines.js'
export { hearLog, logLines, sendLog, strikeLine, waitingEntry, withUnsentLog } from './site-log.js'
