import type { Seconds } from '../quantity/index.js'
import type { DayFrame } from './day-frame.js'
import type { Ground } from './ground.js'
import { NEVER, type SectionClock, workBetween } from './section-clock.js'

/** What a day is worth to a bound: the most work it can hold, each lift counted as `perLift` more. */
export interface Worth {
  readonly perLift: Seconds
  /** Worth of the days before day i, together. */
  readonly before: Float64Array
  readonly ofDay: Float64Array
}

/** Share of a change-over that a lift counts for. Each share gives a bound that holds; the one that claims most counts. */
const SHARES = [0, 0.5, 1]

/** More than all clock tolerances of a campaign together, so that no bound claims too much. */
export const BOUND_SLACK: Seconds = 1

/** Positions of a shift in the day are told apart this finely; between two of them each stretch is as open as at the better one. */
const STEP: Seconds = 900

/** What a shift finds of a stretch: open time, and closed time before it in which a planned stop can be worked off. */
interface Found {
  readonly open: Seconds
  readonly closed: Seconds
}

/**
 * Worth of every day at different prices of a lift.
 *
 * k lifts in an open stretch of length o hold no more work than the k longest lifts of the job, nor than o less k − 1
 * change-overs: worth(o) = max over k of min(o − (k − 1)·c, the k longest) + k·price. In the closed time before a stretch one
 * layer's planned stops can be worked off. A day is worth what its stretches are worth together, as far as one shift
 * reaches them, the shift begun when it reaches most. A lift that bridges two stretches by a planned stop counts as two
 * here, which only makes the day worth more.
 */
export function dayWorths(ground: Ground, days: readonly DayFrame[]): readonly Worth[] {
  const { changeOver } = ground.input.crew
  const longest = longestTogether(ground.sections)
  const longestStop = Math.max(0, ...ground.sections.map(({ holdAfter }) => Math.max(...holdAfter)))
  const stays = days.map(day => staysOf(day, longestStop))
  return SHARES.map(share => {
    const perLift = share * changeOver
    const worth = ({ open, closed }: Found) => stretchWorth(open, longest, changeOver, perLift) + closed
    const ofDay = Float64Array.from(stays, all =>
      all.reduce((most, stay) => Math.max(most, sum(stay.map(worth))), 0),
    )
    return { perLift, ofDay, before: totalsBefore(ofDay) }
  })
}

/** What is left to do. `work`: print time and planned stops; `lifts`: fewest lifts it takes. */
export interface Demand {
  readonly work: Seconds
  readonly lifts: number
}

/** The first day by whose end the days from `from` on are worth so much at every price of a lift, no sooner than `least`. */
export function togetherFinish(
  worths: readonly Worth[],
  from: number,
  { work, lifts }: Demand,
  least: number,
): number {
  let day = least
  for (const { perLift, before } of worths) {
    const needed = before[from]! + work + lifts * perLift - BOUND_SLACK
    while (day + 1 < before.length && before[day + 1]! < needed) day++
    if (day + 1 >= before.length) return NEVER
  }
  return day
}

function stretchWorth(
  open: Seconds,
  longest: readonly Seconds[],
  changeOver: Seconds,
  perLift: Seconds,
): Seconds {
  let most = 0
  for (let k = 1; k < longest.length; k++) {
    const room = open - (k - 1) * changeOver
    if (room <= 0 && k > 1) break
    most = Math.max(most, Math.min(room, longest[k]!) + k * perLift)
  }
  return most
}

/** What the shifts of a day may find: one that covers all stretches, or one at each position. */
function staysOf({ ready, runs, span }: DayFrame, longestStop: Seconds): readonly (readonly Found[])[] {
  const last = runs.at(-1)
  if (!last || span <= 0) return []
  const latest = Math.max(ready, last[1] - span)
  const closed = runs.map(([start], i) => Math.min(longestStop, start - (i > 0 ? runs[i - 1]![1] : ready)))
  // One stretch is best used from its beginning on; sliding tells nothing.
  if (runs.length === 1) return [[{ open: Math.min(span, last[1] - last[0]), closed: closed[0]! }]]
  return Array.from({ length: Math.max(1, Math.ceil((latest - ready) / STEP)) }, (_, i) => {
    const from = ready + i * STEP
    const to = Math.min(latest, from + STEP) + span
    return runs.flatMap(([start, end], r) => {
      const open = Math.min(span, Math.min(end, to) - Math.max(start, from))
      return open > 0 ? [{ open, closed: closed[r]! }] : []
    })
  })
}

/** `together[k]`: the work of the k longest lifts of different sections. */
function longestTogether(sections: readonly SectionClock[]): readonly Seconds[] {
  const longest = sections.map(longestLiftOf).sort((a, b) => b - a)
  return [...totalsBefore(longest)]
}

/** Print time and planned stops of the longest lift the rule and the lift ends allow anywhere in the section. */
function longestLiftOf(section: SectionClock): Seconds {
  let longest = 0
  for (let below = 0; below < section.layers; below++) {
    const top = Math.min(section.liftTop[below]!, below + section.ruleLayers)
    longest = Math.max(longest, workBetween(section, below, top))
  }
  return longest
}

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0)

function totalsBefore(values: ArrayLike<number>): Float64Array {
  const totals = new Float64Array(values.length + 1)
  for (let i = 0; i < values.length; i++) totals[i + 1] = totals[i]! + values[i]!
  return totals
}
