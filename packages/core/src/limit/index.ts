export type { Limit, LimitKind } from './limit.js'
