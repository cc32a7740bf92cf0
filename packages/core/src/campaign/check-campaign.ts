import { addDays, instantAt } from '../clock/index.js'
import { sayQuantity, type Units } from '../limit/index.js'
import type { Finding } from '../result/index.js'
import type { Campaign, PrintDay } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { checkDay } from './check-day.js'
import { checkLift } from './check-lift.js'
import { checkPins } from './check-pins.js'
import { checkSharedLintels } from './check-shared-lintels.js'
import { fault } from './fault.js'

/** Slack on every comparison [s]. */
const SLACK = 5e-3

/**
 * Proves a campaign against every rule, from its clock times alone. Shares no code with the scheduler:
 * a mistake there shows here. No findings: the campaign is safe and workable as far as the input tells.
 */
export function checkCampaign(
  input: CampaignInput,
  campaign: Campaign,
  units: Units = 'metric',
): readonly Finding[] {
  const lifts = campaign.days.flatMap(day => day.lifts.map(lift => ({ day, lift })))
  return [
    ...campaign.days.flatMap(day => checkDay(input, day)),
    ...lifts.flatMap(({ day, lift }) => checkLift(input, day, lift, units)),
    ...checkDayOrder(campaign.days),
    ...input.work.flatMap(work => checkSection(input, campaign, work.section)),
    ...checkSharedLintels(input, campaign),
    ...checkPins(input, campaign),
    ...checkSupply(input, campaign, units),
    ...checkEnd(input, campaign),
  ]
}

function checkDayOrder(days: readonly PrintDay[]): readonly Finding[] {
  return days.flatMap((day, i) => {
    const before = days[i - 1]
    if (!before || (before.date < day.date && before.end <= day.start + SLACK)) return []
    const say = `Day ${day.date} begins before ${before.date} has ended; one crew cannot do both.`
    return [fault('day-order', day.date, before.end, day.start, 's', say)]
  })
}

/** Every layer of a section once, from what stands to the top, one lift a day, each cured before the next. */
function checkSection(input: CampaignInput, campaign: Campaign, section: string): readonly Finding[] {
  const work = input.work.find(one => one.section === section)!
  const standing = input.standing?.find(one => one.section === section)
  const findings: Finding[] = []
  let top = standing?.layers ?? 0
  let lastEnd = standing?.lastEnd ?? Number.NEGATIVE_INFINITY
  const cure = input.rules.overnightCure.value
  for (const day of campaign.days) {
    const lifts = day.lifts.filter(lift => lift.section === section)
    const before = printedThatDay(input, standing?.lastEnd, day.date) ? 1 : 0
    if (lifts.length > 0 && lifts.length + before > 1) {
      const say = `Section ${section} has ${lifts.length + before} lifts on ${day.date}; one a day is allowed.`
      findings.push(fault('one-lift-a-day', section, lifts.length + before, 1, 'lifts', say))
    }
    for (const lift of lifts) {
      if (lift.firstLayer !== top + 1) {
        const say = `Lift ${lift.id} starts at layer ${lift.firstLayer}, but layer ${top} is the last one standing.`
        findings.push(fault('layer-order', lift.id, lift.firstLayer, top + 1, 'layer', say))
      }
      if (lift.start - lastEnd < cure - SLACK) {
        const say = `Lift ${lift.id} starts ${lift.start - lastEnd} s after the one below; it has to cure ${cure} s.`
        findings.push(fault('overnight-cure', lift.id, lift.start - lastEnd, cure, 's', say))
      }
      top = lift.lastLayer
      lastEnd = lift.end
    }
  }
  const layers = work.printTimes.length
  if (campaign.finished && top !== layers) {
    const say = `Section ${section} ends at layer ${top} of ${layers} in a campaign called finished.`
    findings.push(fault('finished', section, top, layers, 'layer', say))
  }
  return findings
}

/** Whether what stands was still being printed in the crew's day of this date. */
function printedThatDay(input: CampaignInput, lastEnd: number | undefined, date: string): boolean {
  const { dayStart, dayEnd, longestShift } = input.crew
  if (lastEnd === undefined) return false
  const opens = instantAt(date, dayStart, input.timeZone)
  const closes = instantAt(dayEnd > dayStart ? date : addDays(date, 1), dayEnd, input.timeZone)
  const began = input.shiftBegan
  const cut = began !== undefined && began >= opens && began < closes ? began + longestShift : closes
  return lastEnd >= opens && lastEnd < Math.min(closes, cut)
}

/** No layer is laid from mix that has not been delivered. */
function checkSupply(input: CampaignInput, campaign: Campaign, units: Units): readonly Finding[] {
  const { deliveries } = input
  if (!deliveries) return []
  const findings: Finding[] = []
  let used = 0
  for (const lift of campaign.days.flatMap(day => day.lifts)) {
    const volumes = input.work.find(one => one.section === lift.section)!.volumes
    for (const [i, end] of lift.layerEnds.entries()) {
      used += volumes[lift.firstLayer - 1 + i]!
      let supplied = deliveries.stock
      for (const load of deliveries.arrivals) if (load.at <= end) supplied += load.volume
      if (used <= supplied + 1e-6) continue
      const say = `Lift ${lift.id} needs ${sayQuantity(used, 'm³', units)} by layer ${lift.firstLayer + i}; ${sayQuantity(supplied, 'm³', units)} had come.`
      findings.push(fault('delivery', lift.id, used, supplied, 'm³', say))
      break
    }
  }
  return findings
}

function checkEnd(input: CampaignInput, campaign: Campaign): readonly Finding[] {
  const lifts = campaign.days.flatMap(day => day.lifts)
  const last = Math.max(...lifts.map(lift => lift.end))
  const findings: Finding[] = []
  if (lifts.length > 0 && Math.abs(campaign.finish - last) > SLACK) {
    const say = `The campaign claims to finish at ${campaign.finish}, its last lift ends at ${last}.`
    findings.push(fault('finish', 'campaign', campaign.finish, last, 's', say))
  }
  if (campaign.bound.days > campaign.days.length && campaign.finished) {
    const say = `${campaign.days.length} print days are fewer than the bound of ${campaign.bound.days}: the bound is wrong.`
    findings.push(fault('bound', 'campaign', campaign.bound.days, campaign.days.length, 'days', say))
  }
  const known = new Set(input.work.map(work => work.section))
  for (const lift of lifts.filter(one => !known.has(one.section))) {
    const say = `Lift ${lift.id} is of section ${lift.section}, which the job does not have.`
    findings.push(fault('section', lift.id, 1, 0, 'sections', say))
  }
  return findings
}
