export { readMixTests } from './read-mix-tests.js'
export { readTrials } from './read-trials.js'
