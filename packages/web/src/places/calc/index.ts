export { CalcPlace } from './calc-place.js'
