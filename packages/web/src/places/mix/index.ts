export { MixPlace } from './mix-place.js'
