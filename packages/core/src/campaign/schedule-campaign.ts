import type { Limit } from '../limit/index.js'
import { scenesOf } from './allowance.js'
import type { Campaign, IdleDay, PrintDay } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import type { Breadth } from './day-options.js'
import type { DayPlan } from './day-plan.js'
import { searchExact } from './exact-search.js'
import { type Ground, prepareGround, type Stand, standAtStart } from './ground.js'
import { hourOf, limitsBeyond } from './hour-table.js'
import { liftReport } from './lift-report.js'
import { type Bounds, finishBound, prepareBounds, printDaysBound } from './lower-bound.js'
import { NEVER } from './section-clock.js'
import { trailPlans } from './trail.js'
import { type Found, searchWide } from './wide-search.js'

/** `quick` serves replays and levers, `full` the plan the crew gets. */
export type Effort = 'quick' | 'full'

/** The shortest campaign found, with the bound that says how much shorter it could be at best. */
export function scheduleCampaign(input: CampaignInput, effort: Effort = 'full'): Campaign {
  const ground = prepareGround(input)
  const bounds = prepareBounds(ground)
  const start = standAtStart(ground)
  const found = findCampaign(ground, bounds, start, effort)
  return campaignOf(ground, bounds, start, found)
}

interface Shortest extends Found {
  readonly isProven: boolean
}

function findCampaign(ground: Ground, bounds: Bounds, start: Stand, effort: Effort): Shortest {
  const least = finishBound(ground, bounds, start, 0)
  let best = searchWide(ground, bounds, start, { trails: 1, firsts: 1, wishes: 1 })
  for (const breadth of effort === 'full' ? breadthsFor(ground) : []) {
    const wider = searchWide(ground, bounds, start, breadth)
    if (isBetter(wider, best)) best = wider
    if (best.finish <= least) break
  }
  if (best.finish <= least || effort === 'quick' || !isSmall(ground)) {
    return { ...best, isProven: best.finish <= least }
  }
  const exact = searchExact(ground, bounds, start, best.finish, { left: 60_000 })
  return { ...(exact.found ?? best), isProven: exact.proven }
}

const isBetter = (a: Found, b: Found): boolean =>
  a.finish < b.finish || (a.finish === b.finish && a.finish !== NEVER && a.trail.site < b.trail.site)

/** Wide for a house, narrower for a street of houses, so that time grows little faster than the work. */
function breadthsFor(ground: Ground): readonly Breadth[] {
  const lifts = ground.sections.reduce(
    (sum, section) => sum + Math.min(section.liftsLeft[0]!, section.layers),
    0,
  )
  if (lifts > 60) return [{ trails: 3, firsts: 2, wishes: 3 }]
  return [
    { trails: 6, firsts: 3, wishes: 3 },
    { trails: 24, firsts: 4, wishes: 3 },
  ]
}

/** Small enough to try everything. */
const isSmall = (ground: Ground): boolean =>
  ground.sections.length <= 4 && ground.sections.reduce((sum, section) => sum + section.layers, 0) <= 80

function campaignOf(ground: Ground, bounds: Bounds, start: Stand, found: Shortest): Campaign {
  const plans = trailPlans(found.trail)
  const days = printDays(ground, plans, start)
  const finish = days.at(-1)?.lifts.at(-1)?.end ?? ground.days[0]?.opens ?? 0
  return {
    days,
    idleDays: idleDays(ground, plans, found.finish),
    finished: found.finish !== NEVER,
    finish,
    hours: ground.input.hours,
    bound: boundOf(ground, bounds, start, found),
  }
}

function printDays(ground: Ground, plans: readonly DayPlan[], start: Stand): readonly PrintDay[] {
  const scenes = scenesOf(ground, plans)
  const counts = ground.sections.map((_, s) => liftsStanding(ground, s, start))
  let next = 0
  return plans.map((plan, i) => ({
    date: plan.day.date,
    number: i + 1,
    start: plan.shiftStart,
    end: plan.shiftEnd,
    lifts: plan.lifts.map(({ s }) => {
      counts[s]!++
      return liftReport(scenes[next++]!, `${ground.sections[s]!.work.section}${counts[s]}`)
    }),
    chilled: plan.lifts.some(lift => needsChiller(ground, lift.start, lift.ends.at(-1)!)),
  }))
}

/** Lifts already standing keep their numbers: new ones count on from the fewest that could have got there. */
function liftsStanding(ground: Ground, s: number, start: Stand): number {
  const section = ground.sections[s]!
  return start.heights[s] === 0 ? 0 : section.liftsLeft[0]! - section.liftsLeft[start.heights[s]!]!
}

function needsChiller({ table }: Ground, from: number, to: number): boolean {
  for (let hour = hourOf(table, from); hour <= hourOf(table, to - 1e-6); hour++) {
    if (table.use[hour] === 2) return true
  }
  return false
}

/** Days between the first and the finish (or the end of the weather) without a lift, and what kept them idle. */
function idleDays(ground: Ground, plans: readonly DayPlan[], finish: number): readonly IdleDay[] {
  const printed = new Set(plans.map(plan => plan.day.date))
  const until = finish === NEVER ? ground.days.length : finish
  return ground.days
    .slice(0, Math.max(0, until))
    .filter(day => !printed.has(day.date))
    .map(day => ({ date: day.date, why: day.off ?? whyIdle(ground, day.opens, day.closes) }))
}

/** The limit that closes most hours of the crew's day; if none does, the sections were still curing. */
function whyIdle(ground: Ground, opens: number, closes: number): Limit {
  const { table, cure, input } = ground
  const counts = new Map<string, { limit: Limit; hours: number }>()
  for (let hour = Math.max(0, hourOf(table, opens)); hour <= hourOf(table, closes - 1e-6); hour++) {
    const known = table.hours[hour]
    if (!known || table.use[hour] !== 0) continue
    for (const limit of limitsBeyond(known)) {
      const count = counts.get(limit.kind) ?? { limit, hours: 0 }
      counts.set(limit.kind, { limit: count.limit, hours: count.hours + 1 })
    }
  }
  const most = [...counts.values()].sort((a, b) => b.hours - a.hours)[0]
  const source = input.rules.overnightCure.source
  return most?.limit ?? { kind: 'overnight-cure', demand: 0, capacity: cure, unit: 's', source }
}

function boundOf(ground: Ground, bounds: Bounds, start: Stand, found: Shortest): Campaign['bound'] {
  const least = finishBound(ground, bounds, start, 0)
  const proven = found.isProven && found.finish !== NEVER ? found.finish : least
  const date = ground.days[proven]?.date
  return {
    days: printDaysBound(ground, bounds, start),
    how: howProven(found, least),
    met: found.finish !== NEVER && found.finish <= proven,
    ...(date === undefined ? {} : { date }),
  }
}

function howProven(found: Shortest, least: number): string {
  if (found.finish !== NEVER && found.isProven && found.finish > least) {
    return 'every order and height of lifts tried; none is up sooner'
  }
  if (least === NEVER)
    return 'the open hours known do not hold the print time, or a section cannot get up in them'
  return 'each section alone by rule height, lift ends and longest open stretch; all print time and change-overs against the open hours'
}
