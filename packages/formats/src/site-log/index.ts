export { logFile, readLog } from './read-log.js'
export { readTold, type Told, toldFile, writeTold } from './told.js'
export { writeEvent, writeStrike } from './write-line.js'
