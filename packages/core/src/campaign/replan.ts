import { localTime } from '../clock/index.js'
import type { Instant } from '../quantity/index.js'
import type { Campaign, PrintDay } from './campaign.js'
import { type CampaignChange, changesBetween } from './campaign-change.js'
import type { CampaignInput, SectionStanding } from './campaign-input.js'
import { findCampaign } from './find-campaign.js'
import { prepareGround, standAtStart } from './ground.js'
import { holdDays, keepTold } from './hold-days.js'
import { prepareBounds } from './lower-bound.js'
import { campaignOf } from './schedule-campaign.js'

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
  const campaign = campaignOf(ground, bounds, start, found, 'full')
  return { campaign, changes: changesBetween(told, campaign, asBuilt.now, input.timeZone), kept: isKept }
}

/** The days of a standing campaign from what stands, as `holdDays` gives them: people hear of what they change at once. */
export function holdRest(
  input: CampaignInput,
  asBuilt: AsBuilt,
  told: Campaign,
  standing: Campaign,
): Replanned | undefined {
  const campaign = holdDays(withAsBuilt(input, asBuilt, told), standing)
  return (
    campaign && { campaign, changes: changesBetween(told, campaign, asBuilt.now, input.timeZone), kept: true }
  )
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
