export { TallyPlace } from './tally-place.js'
