export type { Call } from './call.js'
