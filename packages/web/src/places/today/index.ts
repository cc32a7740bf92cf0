export { TodayPlace } from './today-place.js'
