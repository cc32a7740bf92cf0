import { bestBegin, urgentFirst } from './day-options.js'
import { closeDay, type DayPlan, dayBegins, standAfter } from './day-plan.js'
import { type Ground, isUp, type Stand } from './ground.js'
import { mostClosing } from './idle-days.js'
import type { Bounds } from './lower-bound.js'
import type { LostCause, MishapRates } from './replay-campaign.js'
import type { WorkDay } from './work-day.js'

/** One run through one year: the day it was up, and what each idle working day before was lost to. */
export interface ReplayedRun {
  readonly finish?: string
  readonly lost: readonly LostCause[]
}

/** What a number is drawn for. */
const purposes = { breakdown: 0, repair: 1, isLate: 2, late: 3 } as const

export function replayOnce(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  rates: MishapRates,
  draw: (day: number, purpose: number) => number,
): ReplayedRun {
  const lost: LostCause[] = []
  let stand = start
  let repairedAt = Number.NEGATIVE_INFINITY
  for (const [index, day] of ground.days.entries()) {
    if (isUp(ground, stand)) return { finish: lastDate(ground, index), lost }
    if (day.off) continue
    const delay = lateness(rates, draw, index)
    const opens = Math.max(day.opens + delay, repairedAt)
    const planned = plainDay(ground, bounds, start, stand, index, { ...day, opens })
    if (!planned) {
      lost.push(lostTo(ground, day, repairedAt, delay))
      continue
    }
    const run = withBreakdown(ground, planned, rates, draw, index)
    repairedAt = run.repairedAt
    if (run.plan) stand = standAfter(ground, stand, run.plan)
    else lost.push('breakdown')
  }
  return isUp(ground, stand) ? { finish: lastDate(ground, ground.days.length), lost } : { lost }
}

/** The working day before day `index`: the one that brought the walls up. */
function lastDate(ground: Ground, index: number): string {
  const worked = ground.days.slice(0, index).filter(day => !day.off)
  return worked.at(-1)?.date ?? ground.input.calendar.firstDay
}

/** What a crew does without a planner's night: most urgent first, as high as it goes. */
function plainDay(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  stand: Stand,
  index: number,
  day: WorkDay,
): DayPlan | undefined {
  if (day.opens >= day.closes) return undefined
  const order = urgentFirst(ground, bounds, stand, index)
  return bestBegin(
    ground,
    stand,
    day,
    dayBegins(ground, day, stand),
    order,
    () => Number.POSITIVE_INFINITY,
    start,
  )
}

/** How late the day's mix comes [s]; the lateness itself is exponential about its mean. */
function lateness(
  { lateChance, lateHours }: MishapRates,
  draw: (day: number, purpose: number) => number,
  index: number,
): number {
  if (lateChance <= 0 || draw(index, purposes.isLate) >= lateChance) return 0
  return -Math.log(draw(index, purposes.late)) * lateHours * 3600
}

interface RunDay {
  /** What was printed of the day; undefined: not a layer. */
  readonly plan?: DayPlan
  readonly repairedAt: number
}

/** The day up to its first breakdown, if there is one: whole layers count, the rest of the day goes into the repair. */
function withBreakdown(
  ground: Ground,
  plan: DayPlan,
  { breakdownsPerHour, repairHours }: MishapRates,
  draw: (day: number, purpose: number) => number,
  index: number,
): RunDay {
  const never = { plan, repairedAt: Number.NEGATIVE_INFINITY }
  if (breakdownsPerHour <= 0) return never
  let left = (-Math.log(draw(index, purposes.breakdown)) / breakdownsPerHour) * 3600
  for (const [i, lift] of plan.lifts.entries()) {
    const time = lift.ends.at(-1)! - lift.start
    if (left >= time) {
      left -= time
      continue
    }
    const stopped = lift.start + left
    const repairedAt = stopped - Math.log(draw(index, purposes.repair)) * repairHours * 3600
    const layers = lift.ends.filter(end => end <= stopped).length
    const part = layers > 0 ? [{ ...lift, layers, ends: lift.ends.slice(0, layers) }] : []
    const lifts = [...plan.lifts.slice(0, i), ...part]
    return lifts.length > 0 ? { plan: closeDay(ground, plan.day, lifts), repairedAt } : { repairedAt }
  }
  return never
}

/** Weather first: a closed day would have been lost anyhow. */
function lostTo(ground: Ground, day: WorkDay, repairedAt: number, delay: number): LostCause {
  const closed = mostClosing(ground, day)
  if (closed) return closed.kind
  if (repairedAt > day.opens) return 'breakdown'
  return delay > 0 ? 'late delivery' : 'overnight-cure'
}
