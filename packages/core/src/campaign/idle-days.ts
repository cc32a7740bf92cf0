import type { Limit } from '../limit/index.js'
import type { IdleDay } from './campaign.js'
import type { DayPlan } from './day-plan.js'
import type { Ground, Stand } from './ground.js'
import { hourOf, limitsBeyond, TICK } from './hour-table.js'
import { NEVER } from './section-clock.js'
import type { WorkDay } from './work-day.js'

/** Days between the first and the finish (or the end of the weather) without a lift, and what kept them idle. */
export function idleDays(
  ground: Ground,
  plans: readonly DayPlan[],
  start: Stand,
  finish: number,
): readonly IdleDay[] {
  const printed = new Set(plans.map(plan => plan.day.date))
  const until = finish === NEVER ? ground.days.length : Math.max(0, finish)
  return ground.days
    .slice(0, until)
    .filter(day => !printed.has(day.date))
    .map(day => ({ date: day.date, why: day.off ?? whyIdle(ground, plans, start, day) }))
}

/** The limit that closes most hours of the crew's day; if none does, the cure; if not that, the shift is too short. */
function whyIdle(ground: Ground, plans: readonly DayPlan[], start: Stand, day: WorkDay): Limit {
  const { crew, rules } = ground.input
  const closed = mostClosing(ground, day)
  if (closed) return closed
  const readies = ground.sections.map((_, s) => readyOn(ground, plans, start, s, day))
  const soonest = Math.min(...readies.filter(Number.isFinite))
  if (soonest > day.opens + crew.setUp && Number.isFinite(soonest)) {
    const has = Math.max(0, day.opens + crew.setUp - (soonest - ground.cure))
    const source = rules.overnightCure.source
    return { kind: 'overnight-cure', at: soonest, demand: ground.cure, capacity: has, unit: 's', source }
  }
  const shift = Math.min(crew.longestShift, day.closes - day.opens)
  const needs = crew.setUp + crew.washOut + Math.min(...ground.sections.map(one => one.printTime[1] ?? 0))
  return { kind: 'shift', demand: needs, capacity: shift, unit: 's', source: 'the job' }
}

/** The limit that closes most hours of the day; none where all are open. */
export function mostClosing({ table }: Ground, { opens, closes }: WorkDay): Limit | undefined {
  const counts = new Map<string, { limit: Limit; hours: number }>()
  for (let hour = Math.max(0, hourOf(table, opens)); hour <= hourOf(table, closes - TICK); hour++) {
    const known = table.hours[hour]
    if (!known || table.use[hour] !== 0) continue
    for (const limit of limitsBeyond(known)) {
      const count = counts.get(limit.kind) ?? { limit, hours: 0 }
      counts.set(limit.kind, { limit: count.limit, hours: count.hours + 1 })
    }
  }
  return [...counts.values()].sort((a, b) => b.hours - a.hours)[0]?.limit
}

function readyOn(ground: Ground, plans: readonly DayPlan[], start: Stand, s: number, day: WorkDay): number {
  const lifts = plans.filter(plan => plan.day.date < day.date).flatMap(plan => plan.lifts)
  const last = lifts.filter(lift => lift.s === s).at(-1)
  return last ? last.ends.at(-1)! + ground.cure : start.ready[s]!
}
