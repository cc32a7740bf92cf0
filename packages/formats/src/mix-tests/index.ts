export { readMixTests } from './read-mix-tests.js'
export { readTrials } from './read-trials.js'
export { fitTrials, type TrialFits } from './trial-fits.js'
