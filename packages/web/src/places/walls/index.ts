export { WallsPlace } from './walls-place.js'
