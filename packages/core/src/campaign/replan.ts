import { localTime } from '../clock/index.js'
import type { Instant } from '../quantity/index.js'
import type { Campaign, PrintDay } from './campaign.js'
import { type CampaignChange, changesBetween } from './campaign-change.js'
import type { CampaignInput, SectionStanding } from './campaign-input.js'
import { bestBegin, urgentFirst } from './day-options.js'
import { type DayPlan, dayBegins, fillDay } from './day-plan.js'
import { findCampaign, type Shortest } from './find-campaign.js'
import { type Ground, isUp, prepareGround, type Stand, standAtStart } from './ground.js'
import { type Bounds, prepareBounds } from './lower-bound.js'
import { campaignOf } from './schedule-campaign.js'
import { NEVER } from './section-clock.js'
import { extendTrail, passDay, startTrail, type Trail } from './trail.js'

/** What really stands, and when it is now. */
export interface AsBuilt {
  readonly now: Instant
  readonly standing: readonly SectionStanding[]
  /** When today's shift began, if not as told. */
  readonly shiftBegan?: Instant
}

export interface Replanned {
  readonly campaign: Campaign
  /** Who must be told what, soonest first. */
  readonly changes: readonly CampaignChange[]
  /** Whether the days told before were kept as far as they go. */
  readonly kept: boolean
}

/**
 * Plans what is left from what stands. The days already told are kept, lift by lift, if the finish then comes no later
 * than with a plan made afresh: people have arranged themselves. Otherwise the fresh plan counts.
 */
export function replan(input: CampaignInput, asBuilt: AsBuilt, told: Campaign): Replanned {
  const today = withAsBuilt(input, asBuilt, told)
  const ground = prepareGround(today)
  const bounds = prepareBounds(ground)
  const start = standAtStart(ground)
  const fresh = findCampaign(ground, bounds, start, 'brisk')
  const kept = keepTold(ground, bounds, start, told)
  const isKept = kept.trail.missed <= fresh.trail.missed && kept.finish <= fresh.finish
  const found = isKept ? { ...kept, isProven: fresh.isProven && kept.finish === fresh.finish } : fresh
  const campaign = campaignOf(ground, bounds, start, found, 'brisk')
  return { campaign, changes: changesBetween(told, campaign, asBuilt.now, input.timeZone), kept: isKept }
}

function withAsBuilt(input: CampaignInput, asBuilt: AsBuilt, told: Campaign): CampaignInput {
  const standing = asBuilt.standing.map(one => ({ ...one, lifts: one.lifts ?? liftsBegun(told, one) }))
  const today = { ...input, calendar: { ...input.calendar, now: asBuilt.now }, standing }
  // Untold, the shift began as planned: the same crew cannot start a fresh one on the same day.
  const planned = told.days.find(day => day.start <= asBuilt.now && isSameDay(input, day, asBuilt.now))
  const shiftBegan = asBuilt.shiftBegan ?? planned?.start
  return shiftBegan === undefined ? today : { ...today, shiftBegan }
}

const isSameDay = ({ timeZone }: CampaignInput, day: PrintDay, now: Instant): boolean =>
  now <= day.end || localTime(now, timeZone).date === day.date

/** A lift broken off counts: what is printed on top of it is a lift of its own. */
const liftsBegun = (told: Campaign, { section, layers }: SectionStanding): number =>
  told.days.flatMap(day => day.lifts).filter(lift => lift.section === section && lift.firstLayer <= layers)
    .length

/** The told days again, from what stands now: same sections in the same order, up to the same layers if they get there. */
function keepTold(ground: Ground, bounds: Bounds, start: Stand, told: Campaign): Shortest {
  const byDate = new Map(told.days.map(day => [day.date, day]))
  let trail: Trail = startTrail(start)
  for (let day = 0; day < ground.days.length; day++) {
    if (isUp(ground, trail.stand)) return { trail, finish: day - 1, isProven: false }
    const { date, off } = ground.days[day]!
    const plan = off ? undefined : toldDay(ground, bounds, start, trail.stand, day, byDate.get(date))
    trail = plan ? extendTrail(ground, trail, plan) : passDay(ground, trail, date)
  }
  const finish = isUp(ground, trail.stand) ? ground.days.length - 1 : NEVER
  return { trail, finish, isProven: false }
}

function toldDay(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  stand: Stand,
  day: number,
  told: PrintDay | undefined,
): DayPlan | undefined {
  const workDay = ground.days[day]!
  const urgent = urgentFirst(ground, bounds, stand, day)
  const names = ground.sections.map(section => section.work.section)
  const first = (told?.lifts ?? []).map(lift => names.indexOf(lift.section)).filter(s => urgent.includes(s))
  const order = [...first, ...urgent.filter(s => !first.includes(s))]
  const wish = (s: number, below: number) => {
    const lift = told?.lifts.find(one => one.section === names[s])
    // A lift told before stops where it was told to; behind schedule it goes as far as it can.
    return lift && lift.lastLayer > below ? lift.lastLayer - below : Number.POSITIVE_INFINITY
  }
  const toldStart = told?.lifts.find(lift => names.indexOf(lift.section) === first[0])?.start
  const asTold = toldStart && fillDay(ground, stand, workDay, toldStart, order, wish, start)
  if (asTold && asTold.lifts.length >= first.length) return asTold
  return bestBegin(ground, stand, workDay, dayBegins(ground, workDay, stand), order, wish, start)
}
