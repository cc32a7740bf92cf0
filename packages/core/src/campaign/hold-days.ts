import type { Campaign, Lift, PrintDay } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { bestBegin, urgentFirst } from './day-options.js'
import { type DayPlan, dayBegins, fillDay } from './day-plan.js'
import { type Ground, isUp, prepareGround, type Stand, standAtStart } from './ground.js'
import { type Bounds, prepareBounds } from './lower-bound.js'
import { campaignOf } from './schedule-campaign.js'
import { NEVER } from './section-clock.js'
import type { Shortest } from './settled-campaigns.js'
import { extendTrail, passDay, startTrail, type Trail } from './trail.js'

/**
 * The days of a standing campaign on a changed job: the same sections in the same order to the same layers, at the clock,
 * the hours and the physics of the job as it is now. Every rule is kept; better days are not looked for. Undefined where
 * the days do not carry over: other sections, or walls that were up and would not be.
 */
export function holdDays(input: CampaignInput, told: Campaign): Campaign | undefined {
  const sections = new Set(input.work.map(({ section }) => section))
  const printed = new Set(told.days.flatMap(day => day.lifts.map(lift => lift.section)))
  if (!told.finished || [...printed].some(section => !sections.has(section))) return undefined
  const ground = prepareGround(input)
  const bounds = prepareBounds(ground)
  const start = standAtStart(ground)
  const found = keepTold(ground, bounds, start, told)
  return found.finish === NEVER ? undefined : campaignOf(ground, bounds, start, found, 'full')
}

/** The told days again, from what stands now: same sections in the same order, up to the same layers if they get there. */
export function keepTold(ground: Ground, bounds: Bounds, start: Stand, told: Campaign): Shortest {
  const byDate = new Map(told.days.map(day => [day.date, day]))
  const upBy = told.finished ? told.days.at(-1)?.date : undefined
  let trail: Trail = startTrail(start)
  let due = startTops(ground, start)
  for (let day = 0; day < ground.days.length; day++) {
    if (isUp(ground, trail.stand)) return { trail, finish: day - 1, isProven: false }
    const { date, off } = ground.days[day]!
    const today = byDate.get(date)
    const isAhead =
      upBy !== undefined && date <= upBy && due.every((top, s) => trail.stand.heights[s]! >= top)
    const plan = off
      ? undefined
      : ((isAhead ? dayAsTold(ground, start, trail.stand, day, today) : undefined) ??
        (isAhead && !today ? undefined : dayLikeTold(ground, bounds, start, trail.stand, day, today)))
    trail = plan ? extendTrail(ground, trail, plan) : passDay(ground, trail, date)
    due = topsAfter(ground, due, today)
  }
  const finish = isUp(ground, trail.stand) ? ground.days.length - 1 : NEVER
  return { trail, finish, isProven: false }
}

/** Layers at which each section was to stand in the morning, as far as it goes that high. */
const startTops = (ground: Ground, start: Stand): readonly number[] =>
  ground.sections.map((_, s) => start.heights[s]!)

const topsAfter = (ground: Ground, due: readonly number[], day: PrintDay | undefined): readonly number[] =>
  due.map((top, s) => {
    const { work, layers } = ground.sections[s]!
    const lift = day?.lifts.find(one => one.section === work.section)
    return Math.min(layers, Math.max(top, lift?.lastLayer ?? 0))
  })

/** The told lifts that are still to be printed. */
const liftsLeft = (ground: Ground, stand: Stand, told: PrintDay | undefined) =>
  (told?.lifts ?? []).flatMap((lift): readonly { readonly s: number; readonly lift: Lift }[] => {
    const s = ground.sections.findIndex(({ work }) => work.section === lift.section)
    const section = ground.sections[s]
    const isLeft = section && Math.min(lift.lastLayer, section.layers) > stand.heights[s]!
    return isLeft ? [{ s, lift }] : []
  })

/** The day just as it was told, if every lift gets as high. */
function dayAsTold(
  ground: Ground,
  start: Stand,
  stand: Stand,
  day: number,
  told: PrintDay | undefined,
): DayPlan | undefined {
  const left = liftsLeft(ground, stand, told)
  const first = left[0]
  if (!first) return undefined
  const wish = (s: number, below: number) => {
    const own = left.find(one => one.s === s)!
    return Math.min(own.lift.lastLayer, ground.sections[s]!.layers) - below
  }
  const order = left.map(({ s }) => s)
  const plan = fillDay(
    ground,
    stand,
    ground.days[day]!,
    first.lift.start,
    order,
    wish,
    start,
    new Map(),
    'wished',
  )
  const isAsTold = plan?.lifts.every(({ s, below, layers }) => layers === wish(s, below))
  return isAsTold && plan?.lifts.length === left.length ? plan : undefined
}

/** As told as far as it gets; what is behind goes as far as it can, and in what is left of the day so do the others. */
function dayLikeTold(
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
