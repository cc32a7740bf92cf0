import { bestBegin, urgentFirst } from './day-options.js'
import { type DayPlan, dayBegins, fillDay, type PlacedLift } from './day-plan.js'
import { type Ground, isUp, type Stand } from './ground.js'
import { liftTrial, reachOf, standingOf } from './lift-reach.js'
import type { Bounds } from './lower-bound.js'
import { NEVER } from './section-clock.js'
import { askStanding, estimateStanding, keepSample } from './standing-book.js'
import { extendTrail, passDay, startTrail, type Trail, trailPlans } from './trail.js'
import type { Found } from './wide-search.js'

/** The campaign as it really stands, and how many answers differed from what the search had taken for granted. */
export interface AskedCampaign {
  readonly asked: Found
  readonly learned: number
}

/**
 * Prints a campaign found on samples again, every lift asked of the physics. As long as the heights are as planned the day
 * goes as planned; once a lift stays lower, the days after go by urgency.
 */
export function putToPhysics(ground: Ground, bounds: Bounds, start: Stand, found: Found): AskedCampaign {
  const plans = new Map(trailPlans(found.trail).map(plan => [plan.day.date, plan]))
  let trail: Trail = startTrail(start)
  let learned = 0
  let isAsPlanned = true
  for (let day = 0; day < ground.days.length; day++) {
    if (isUp(ground, trail.stand)) return { asked: { trail, finish: day - 1 }, learned }
    const plan = plans.get(ground.days[day]!.date)
    for (const lift of plan?.lifts ?? []) learned += learnFrom(ground, trail.stand, lift)
    // A day left out on purpose stays left out, as long as nothing stands lower than planned.
    const isLeftOut: boolean = !plan && isAsPlanned
    const again: DayPlan | undefined = isLeftOut
      ? undefined
      : dayAgain(ground, bounds, start, trail.stand, day, plan)
    isAsPlanned &&= isLeftOut || !plan || isPrintedAs(plan, again)
    trail = again ? extendTrail(ground, trail, again) : passDay(ground, trail, ground.days[day]!.date)
  }
  return { asked: { trail, finish: isUp(ground, trail.stand) ? ground.days.length - 1 : NEVER }, learned }
}

const isPrintedAs = ({ lifts }: DayPlan, again: DayPlan | undefined): boolean =>
  lifts.length === again?.lifts.length &&
  lifts.every(({ s, below, layers }, i) => {
    const lift = again.lifts[i]!
    return lift.s === s && lift.below === below && lift.layers === layers
  })

function dayAgain(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  stand: Stand,
  day: number,
  plan: DayPlan | undefined,
): DayPlan | undefined {
  const workDay = ground.days[day]!
  if (workDay.off) return undefined
  if (plan?.lifts.every(lift => stand.heights[lift.s] === lift.below)) {
    const order = plan.lifts.map(lift => lift.s)
    const wish = (s: number) => plan.lifts.find(lift => lift.s === s)!.layers
    return fillDay(ground, stand, workDay, plan.lifts[0]!.start, order, wish, start, new Map(), 'wished')
  }
  const begins = dayBegins(ground, workDay, stand)
  const order = urgentFirst(ground, bounds, stand, day)
  return bestBegin(ground, stand, workDay, begins, order, () => Number.POSITIVE_INFINITY, start)
}

/** Asks for the planned lift, and where the estimate had cut it, for the layers it was cut by. Counts what was new. */
function learnFrom(ground: Ground, stand: Stand, lift: PlacedLift): number {
  const section = ground.sections[lift.s]!
  if (stand.heights[lift.s] !== lift.below) return 0
  const { pace } = section
  const { ends } = reachOf(ground, lift.s, lift.below, lift.start)
  const isCut = (count: number) => {
    const trial = liftTrial(ground.table, section, lift.below, lift.start, ends.slice(0, count))
    const estimate = estimateStanding(ground.book, pace, lift.below, trial.temperature, count)
    return estimate !== undefined && estimate < count
  }
  const count = lift.layers < ends.length && isCut(lift.layers + 1) ? ends.length : lift.layers
  const trial = liftTrial(ground.table, section, lift.below, lift.start, ends.slice(0, count))
  const answer = askStanding(ground.book, trial)
  if (Math.min(count, Math.floor(answer.layers)) === lift.layers) return 0
  keepSample(ground.book, pace, trial, answer)
  return 1
}

/** The same trail with every lift asked of the physics; undefined if one of them does not stand. */
export function confirmTrail(ground: Ground, trail: Trail): Trail | undefined {
  const start = trailStart(trail)
  let confirmed: Trail = startTrail(start)
  for (const plan of trailPlans(trail)) {
    const lifts = plan.lifts.map(lift => {
      const stands = standingOf(ground, ground.sections[lift.s]!, lift.below, lift.start, lift.ends)
      return { ...lift, safety: stands.safety, stands: stands.layers >= lift.layers }
    })
    if (!lifts.every(lift => lift.stands)) return undefined
    confirmed = extendTrail(ground, confirmed, { ...plan, lifts })
  }
  return confirmed
}

const trailStart = (trail: Trail): Stand => (trail.last ? trailStart(trail.last.before) : trail.stand)
