export type { Quantities, Tally } from './tally.js'
