export { TradesPlace } from './trades-place.js'
