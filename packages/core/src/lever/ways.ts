import { type PrintDay, type TradeOff, tradeOffs } from '../campaign/index.js'
import type { Aim } from '../job/index.js'
import { daysToCome, type Plan, restOfPlan } from '../plan/index.js'
import { campaignCost } from '../tally/index.js'

/** One way to run the campaign, really planned. */
export interface Way extends Omit<TradeOff, 'campaign'> {
  /** The plan as it stands is this one. */
  readonly isPlanned: boolean
  /** Aims of the job under which it is planned this way. */
  readonly ledToBy: readonly Aim[]
}

/** Lifts weigh as the scheduler weighs them for `calmest`. */
const perLift = 4 * 3600

/** What waiting buys, soonest first; with a site log, of what is left. */
export function waysOf(plan: Plan, progress: (stage: 'campaign', share: number) => void): readonly Way[] {
  const found = tradeOffs(
    restOfPlan(plan),
    each => campaignCost(plan.job, each, plan.soFar !== undefined),
    share => progress('campaign', share),
  )
  return found.map(({ campaign: planned, ...way }) => ({
    ...way,
    isPlanned: liftsOf(planned.days) === liftsOf(daysToCome(plan)),
    ledToBy: aims.filter(aim => leadsTo(found, aim) === planned),
  }))
}

const aims: readonly Aim[] = ['soonest', 'cheapest', 'calmest']

/** A job with an aim is planned the least heavy way of those found for it; the soonest is always among them. */
function leadsTo(found: readonly TradeOff[], aim: Aim): TradeOff['campaign'] | undefined {
  const weight = ({ cost, siteTime, lifts }: TradeOff) =>
    aim === 'calmest' ? siteTime + perLift * lifts : cost
  const own = found.filter(way => way.aim === 'soonest' || way.foundBy.includes(aim))
  const [first] = aim === 'soonest' ? own : [...own].sort((a, b) => weight(a) - weight(b))
  return first?.campaign
}

const liftsOf = (days: readonly PrintDay[]): string =>
  days.flatMap(day => day.lifts.map(lift => `${lift.id} ${lift.lastLayer} ${day.date}`)).join()
