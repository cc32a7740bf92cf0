export { isBeyond, marginOf } from './beyond.js'
export type { Limit, LimitKind } from './limit.js'
export type { Units } from './limit-words.js'
export { sayLimit, sayQuantity } from './limit-words.js'
