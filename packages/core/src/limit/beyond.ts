import type { Limit } from './limit.js'

/**
 * Whether a limit is exceeded: more is demanded than there is or may be. Meeting it exactly is allowed.
 * For limits from below (cold mix, cold air, daylight, cure) the demand is the least the rule asks for, the capacity
 * what there is, so that one comparison serves all.
 */
export const isBeyond = (limit: Limit): boolean => limit.demand > limit.capacity

/** Room left under a limit, in its own unit; negative beyond it. */
export const marginOf = (limit: Limit): number => limit.capacity - limit.demand
