export { assert, Bug } from './bug.js'
export type { Finding, Verdict } from './finding.js'
export type { Problem, Result } from './result.js'
export { failure, success } from './result.js'
