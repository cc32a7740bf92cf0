import {
  type Campaign,
  type CampaignChange,
  type CampaignInput,
  holdRest,
  type Lift,
  type PrintDay,
  type Replanned,
  replan,
  type SectionStanding,
  scheduleCampaign,
} from '../campaign/index.js'
import { localTime } from '../clock/index.js'
import type { Instant } from '../quantity/index.js'
import { builtLifts } from './built-lifts.js'
import { byKey } from './by-key.js'
import { leftFrom, type Stands } from './left-from.js'
import { inOrder, type SiteEvent } from './site-event.js'
import type { SiteLog } from './site-log.js'

/** The campaign with the days that are over as they were and the rest planned anew. */
export interface ResumedCampaign {
  /** Days over and days to come, numbered through. */
  readonly campaign: Campaign
  /** What is to come alone, with what it was planned from: what a check of the rest reads. */
  readonly rest: { readonly input: CampaignInput; readonly campaign: Campaign }
  readonly built: readonly Lift[]
  readonly stands: Stands
  /** Who must be told what, soonest first. */
  readonly changes: readonly CampaignChange[]
  /** Whether the days told before were kept as far as they go. */
  readonly kept: boolean
}

/** Plans what is left from what really stands, with as few changes as can be to what people were told. */
export function resumeCampaign(input: CampaignInput, log: SiteLog): ResumedCampaign {
  const told = log.told ?? scheduleCampaign(input)
  const left = whatIsLeft(input, log, told)
  return joined(left, replan(left.input, left.stands, told))
}

/** What is left as a standing campaign has it; undefined where its days do not carry over. */
export function holdResumed(
  input: CampaignInput,
  log: SiteLog,
  standing: Campaign,
): ResumedCampaign | undefined {
  const told = log.told ?? standing
  const left = whatIsLeft(input, log, told)
  const held = holdRest(left.input, left.stands, told, standing)
  return held && joined(left, held)
}

/** What the rest is planned from, and what is over. */
interface WhatIsLeft {
  readonly input: CampaignInput
  readonly stands: Stands
  readonly built: readonly Lift[]
  readonly over: readonly PrintDay[]
}

function whatIsLeft(input: CampaignInput, log: SiteLog, told: Campaign): WhatIsLeft {
  const built = builtLifts(input, log.events, told)
  const shiftBegan = shiftOf(log, input.timeZone)
  const stands: Stands = {
    now: log.now,
    standing: standingOf(built),
    printed: built.reduce((sum, lift) => sum + lift.volume, 0),
    ...(shiftBegan === undefined ? {} : { shiftBegan }),
  }
  return { input: leftFrom(input, stands), stands, built, over: daysOver(input, built, log.events) }
}

function joined(
  { input, stands, built, over }: WhatIsLeft,
  { campaign: rest, changes, kept }: Replanned,
): ResumedCampaign {
  const days = joinDays(over, rest.days)
  // A day on which something was printed is none without a lift, whatever stands in the way of more.
  const idleDays = rest.idleDays.filter(({ date }) => !days.some(day => day.date === date))
  return {
    campaign: {
      ...rest,
      days,
      idleDays,
      bound: boundWith(over, rest, localTime(stands.now, input.timeZone).date),
    },
    rest: { input, campaign: rest },
    built,
    stands,
    changes,
    kept,
  }
}

/** Days over and the fewest to come; today counts once, whatever else is printed on it. */
function boundWith(over: readonly PrintDay[], { bound }: Campaign, today: string): Campaign['bound'] {
  const before = over.filter(({ date }) => date < today).length
  return { ...bound, days: before + Math.max(over.length - before, bound.days) }
}

/** How high each section stands, since when, in how many lifts. */
export function standingOf(built: readonly Lift[]): readonly SectionStanding[] {
  return [...byKey(built, lift => lift.section)].map(([section, lifts]) => {
    const last = lifts.reduce((a, b) => (b.lastLayer > a.lastLayer ? b : a))
    return { section, layers: last.lastLayer, lastEnd: last.end, lifts: lifts.length }
  })
}

function shiftOf({ events, now }: SiteLog, zone: string): Instant | undefined {
  const today = localTime(now, zone).date
  return inOrder(events)
    .filter(({ kind, at }) => kind === 'shift' && at <= now && localTime(at, zone).date === today)
    .at(-1)?.at
}

/** Days on which something of what stands was printed. */
function daysOver(
  { timeZone, crew }: CampaignInput,
  built: readonly Lift[],
  events: readonly SiteEvent[],
): readonly PrintDay[] {
  const byDate = byKey(built, lift => localTime(lift.end, timeZone).date)
  return [...byDate].map(([date, lifts], index) => {
    const began = events.find(event => event.kind === 'shift' && localTime(event.at, timeZone).date === date)
    const start = began?.at ?? lifts[0]!.start - crew.setUp
    const end = Math.max(...lifts.map(lift => lift.end)) + crew.washOut
    return { date, number: index + 1, start, end, lifts, chilled: false }
  })
}

/** A day half over and still going is one day. */
function joinDays(over: readonly PrintDay[], rest: readonly PrintDay[]): readonly PrintDay[] {
  const last = over.at(-1)
  const [first, ...later] = rest
  const isSame = last !== undefined && first?.date === last.date
  const days = isSame
    ? [
        ...over.slice(0, -1),
        { ...first, start: last.start, lifts: [...last.lifts, ...first.lifts] },
        ...later,
      ]
    : [...over, ...rest]
  return days.map((day, index) => ({ ...day, number: index + 1 }))
}
