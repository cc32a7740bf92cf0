import { scenesOf } from './allowance.js'
import type { Campaign, PrintDay } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import type { DayPlan } from './day-plan.js'
import { type Effort, findCampaign, plainFinish } from './find-campaign.js'
import { type Ground, prepareGround, type Stand, standAtStart } from './ground.js'
import { hourOf, TICK } from './hour-table.js'
import { idleDays } from './idle-days.js'
import { liftReport } from './lift-report.js'
import { type Bounds, finishBound, prepareBounds, printDaysBound } from './lower-bound.js'
import { leverBench, liftGains } from './next-gain.js'
import { NEVER } from './section-clock.js'
import type { Shortest } from './settled-campaigns.js'
import { trailPlans } from './trail.js'

/** The shortest campaign found, with the bound that says how much shorter it could be at best. */
export function scheduleCampaign(input: CampaignInput, effort: Effort = 'full'): Campaign {
  const ground = prepareGround(input)
  const bounds = prepareBounds(ground)
  const start = standAtStart(ground)
  const found = findCampaign(ground, bounds, start, effort)
  return campaignOf(ground, bounds, start, found, effort)
}

/** A found trail told as a campaign; with full effort each lift tells its levers. */
export function campaignOf(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  found: Shortest,
  effort: Effort,
): Campaign {
  const plans = trailPlans(found.trail)
  const days = printDays(ground, plans, start, effort)
  const finish = days.at(-1)?.lifts.at(-1)?.end ?? ground.days[0]?.opens ?? 0
  return {
    days,
    idleDays: idleDays(ground, plans, start, found.finish),
    finished: found.finish !== NEVER,
    finish,
    hours: ground.input.hours,
    bound: boundOf(ground, bounds, start, found),
  }
}

function printDays(
  ground: Ground,
  plans: readonly DayPlan[],
  start: Stand,
  effort: Effort,
): readonly PrintDay[] {
  const scenes = scenesOf(ground, plans, start)
  const bench = leverBench(ground, plans.at(-1)?.day.closes ?? 0, plainFinish)
  const counts = [...start.lifts]
  let next = 0
  return plans.map((plan, i) => ({
    date: plan.day.date,
    number: i + 1,
    start: plan.shiftStart,
    end: plan.shiftEnd,
    lifts: plan.lifts.map(({ s }) => {
      const scene = scenes[next++]!
      counts[s]!++
      const id = `${ground.sections[s]!.work.section}${counts[s]}`
      return liftReport(scene, id, effort === 'full' ? liftGains(scene, bench) : [])
    }),
    chilled: plan.lifts.some(lift => needsChiller(ground, lift.start, lift.ends.at(-1)!)),
  }))
}

/** Figures of an hour stand for its middle: half an hour to either side the mix is on its way there. */
function needsChiller({ table }: Ground, from: number, to: number): boolean {
  for (let hour = hourOf(table, from - 1800); hour <= hourOf(table, to + 1800 - TICK); hour++) {
    if (table.use[hour] === 2) return true
  }
  return false
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
  if (least === NEVER) {
    return 'the open hours known do not hold the print time, or a section cannot get up in them'
  }
  return 'each section alone by rule height, lift ends and longest open stretch; all print time and change-overs against the open hours'
}
