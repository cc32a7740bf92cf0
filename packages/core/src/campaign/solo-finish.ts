import type { DayFrame } from './day-frame.js'
import type { Ground } from './ground.js'
import { TICK } from './hour-table.js'
import { NEVER, type SectionClock, workBetween } from './section-clock.js'

/** The days as the crew finds them, and the finishes known so far. */
interface SoloBounds {
  readonly days: readonly DayFrame[]
  readonly solo: Map<number, number>
}

/** First day by whose end section `s`, alone on site, could be up from `height`; or stand `top` layers, a lift end of it. */
export function soloFinish(
  ground: Ground,
  bounds: SoloBounds,
  s: number,
  height: number,
  from: number,
  top: number = ground.sections[s]!.layers,
): number {
  const section = ground.sections[s]!
  if (height >= top) return from - 1
  if (from >= bounds.days.length) return NEVER
  const key = ((s * (bounds.days.length + 1) + from) * 4096 + height) * 4096 + top
  const known = bounds.solo.get(key)
  if (known !== undefined) return known
  const isClosed = ground.pins[s]!.closed.has(ground.days[from]!.date)
  const next = isClosed ? height : soloDay(section, height, bounds.days[from]!)
  const finish = soloFinish(ground, bounds, s, next, from + 1, top)
  bounds.solo.set(key, finish)
  return finish
}

/** Height after one lift in the stretch that holds most of it. Print times differ by layer, so it is looked up, not divided. */
function soloDay(section: SectionClock, height: number, { runs, ready, span }: DayFrame): number {
  const top = Math.min(section.liftTop[height]!, height + section.ruleLayers)
  const holdBefore = section.holdAfter[height]!
  const room = runs.reduce(
    (most, [from, until]) =>
      Math.max(most, Math.min(span - holdBefore, until - Math.max(from, ready + holdBefore))),
    0,
  )
  const gap = runs.reduce(
    (least, [from], i) => (i > 0 ? Math.min(least, from - runs[i - 1]![1]) : least),
    Number.POSITIVE_INFINITY,
  )
  let reached = height
  let bridged = false
  while (reached < top) {
    // A stop as long as a gap may bridge two stretches.
    bridged ||= reached > height && section.holdAfter[reached]! >= gap
    const takes = workBetween(section, height, reached + 1)
    if (!bridged && takes - holdBefore > room + TICK) break
    reached++
  }
  return reached
}
