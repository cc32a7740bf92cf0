export { Ribbon } from './ribbon.js'
