import type { Limit, LimitKind } from './limit.js'

/** Limits that ask for at least their capacity: mix, air and sun may not be lower, the cure not shorter. */
const floors: ReadonlySet<LimitKind> = new Set<LimitKind>([
  'mix-cold',
  'air-cold',
  'daylight',
  'overnight-cure',
])

/** Whether a limit is a floor (at least) rather than a ceiling (at most). */
export const isFloor = (kind: LimitKind): boolean => floors.has(kind)

/** Whether the demand lies beyond what the limit allows. Meeting it exactly is allowed. */
export const isBeyond = (limit: Limit): boolean =>
  isFloor(limit.kind) ? limit.demand < limit.capacity : limit.demand > limit.capacity

/** How far inside the limit the demand lies, in the limit's own unit; negative beyond it. */
export const marginOf = (limit: Limit): number =>
  isFloor(limit.kind) ? limit.demand - limit.capacity : limit.capacity - limit.demand
