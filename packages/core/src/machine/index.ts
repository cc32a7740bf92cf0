export type { Machine } from './machine.js'
