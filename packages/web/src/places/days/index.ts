export { DaysPlace } from './days-place.js'
