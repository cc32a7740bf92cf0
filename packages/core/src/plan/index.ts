export type { Plan } from './plan.js'
