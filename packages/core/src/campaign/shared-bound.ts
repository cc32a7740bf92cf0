import type { SectionWork } from './campaign.js'
import type { DayFrame } from './day-frame.js'
import { type Demand, togetherFinish, type Worth } from './day-worth.js'
import type { Ground, Stand } from './ground.js'
import { NEVER, workBetween } from './section-clock.js'
import { soloFinish } from './solo-finish.js'

/** One lintel and the sections that carry it, each up to its layer. */
export type Carried = readonly { readonly s: number; readonly at: number }[]

/** Lift ends that several sections have in common, the lowest first. */
export function carriedTogether(work: readonly SectionWork[]): readonly Carried[] {
  const byEnd = new Map<string, { s: number; at: number }[]>()
  for (const [s, { liftEnds }] of work.entries()) {
    for (const { ref, reason, afterLayer } of liftEnds) {
      const key = `${reason}|${ref}`
      byEnd.set(key, [...(byEnd.get(key) ?? []), { s, at: afterLayer }])
    }
  }
  const lowest = (carried: Carried) => Math.min(...carried.map(({ at }) => at))
  return [...byEnd.values()]
    .filter(carried => new Set(carried.map(({ s }) => s)).size > 1)
    .sort((a, b) => lowest(a) - lowest(b))
}

interface SharedBounds {
  readonly days: readonly DayFrame[]
  readonly worths: readonly Worth[]
  readonly carried: readonly Carried[]
  readonly solo: Map<number, number>
}

/**
 * First day by whose end the sections that carry something together could be up, no sooner than `least`: none goes on above
 * it before the day after all stand up to it. Lintels are gone through from the lowest; a section waits at each of its own.
 */
export function sharedFinish(
  ground: Ground,
  bounds: SharedBounds,
  stand: Stand,
  from: number,
  least: number,
): number {
  const heights = [...stand.heights]
  const days = heights.map(() => from)
  let latest = least
  for (const carried of bounds.carried) {
    const below = carried.filter(({ s, at }) => heights[s]! < at)
    if (below.length === 0) continue
    const reached = below.map(({ s, at }) => soloFinish(ground, bounds, s, heights[s]!, days[s]!, at))
    const work = demand(
      ground,
      below.map(({ s, at }) => [s, stand.heights[s]!, at]),
    )
    const day = togetherFinish(bounds.worths, from, work, Math.max(from, ...reached))
    if (day >= NEVER) return NEVER
    const waiting = carried.filter(({ s, at }) => heights[s]! <= at)
    for (const { s, at } of waiting) [heights[s], days[s]] = [at, day + 1]
    const above = demand(
      ground,
      waiting.map(({ s, at }) => [s, at, ground.sections[s]!.layers]),
    )
    latest = Math.max(latest, togetherFinish(bounds.worths, day + 1, above, day))
  }
  return heights.reduce(
    (last, height, s) => Math.max(last, soloFinish(ground, bounds, s, height, days[s]!)),
    latest,
  )
}

/** Work and fewest lifts of some sections from one layer to another, each a lift end or the top. */
function demand({ sections }: Ground, parts: readonly (readonly [number, number, number])[]): Demand {
  return parts.reduce(
    (sum, [s, from, to]) => {
      const { liftsLeft } = sections[s]!
      return {
        work: sum.work + workBetween(sections[s]!, from, to),
        lifts: sum.lifts + liftsLeft[from]! - liftsLeft[to]!,
      }
    },
    { work: 0, lifts: 0 },
  )
}
