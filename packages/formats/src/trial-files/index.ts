export { cornerSampler, speedLadder } from './trial-beads.js'
export { trialSheet } from './trial-sheet.js'
export { type TrialFile, type TrialPrint, trialWall } from './trial-wall.js'
