export { type TrialFile, type TrialPrint, trialWall } from './trial-wall.js'
