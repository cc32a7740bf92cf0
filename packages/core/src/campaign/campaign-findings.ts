import { localTime } from '../clock/index.js'
import { isBeyond, type Limit, type LimitKind, sayLimit, type Units } from '../limit/index.js'
import { formatQuantity } from '../quantity/index.js'
import { closestName, type Finding } from '../result/index.js'
import type { Campaign, SectionWork } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { closeLiftEndFindings } from './close-lift-ends.js'
import { limitName } from './explain-lift.js'
import { type Ground, prepareGround } from './ground.js'
import { prepareBounds } from './lower-bound.js'
import { brokenPins } from './move-lift.js'
import { sectionClock } from './section-clock.js'
import { askStanding } from './standing-book.js'
import { calendarDays, type WorkDay } from './work-day.js'

/** What the lead has to know of a campaign besides its days: what never gets up and why, and a date missed. */
export function campaignFindings(
  input: CampaignInput,
  campaign: Campaign,
  units: Units = 'metric',
): readonly Finding[] {
  const ground = prepareGround(input)
  const stuck = campaign.finished
    ? []
    : input.work.flatMap(work => stuckSection(ground, campaign, work, units))
  return [
    ...stuck,
    ...dueFinding(input, campaign),
    ...crawlFindings(campaign),
    ...closeLiftEndFindings(input),
    ...pinFindings(input, campaign),
  ]
}

const heightReached = (input: CampaignInput, campaign: Campaign, section: string): number => {
  const lifts = campaign.days.flatMap(day => day.lifts).filter(lift => lift.section === section)
  return lifts.at(-1)?.lastLayer ?? input.standing?.find(one => one.section === section)?.layers ?? 0
}

/** Why a section does not get up: it never fits a lift, its mix does not stand, no hours open, or the weather ends. */
function stuckSection(
  ground: Ground,
  campaign: Campaign,
  work: SectionWork,
  units: Units,
): readonly Finding[] {
  const { input } = ground
  const reached = heightReached(input, campaign, work.section)
  if (reached >= work.printTimes.length) return []
  const rule = input.rules.liftHeight
  const clock = sectionClock(work, rule.value)
  if (clock.ruleLayers < 1) {
    const layer = formatQuantity(work.layerHeight, 'length', units)
    const say = `Section ${work.section} never fits: one layer is ${layer} high, a lift may be ${formatQuantity(rule.value, 'length', units)}. Allow ${layer}.`
    return [fail('never-fits', work.section, work.layerHeight, rule.value, 'm', rule.source, say)]
  }
  const first = work.printTimes[reached]! + clock.holdAfter[reached]!
  const sag = firstLayerSags(ground, work, reached)
  if (sag) {
    const say = `Section ${work.section} stops at layer ${reached}: ${sayLimit(sag, units, input.timeZone)}. Print a stiffer mix.`
    return [fail('does-not-stand', work.section, sag.demand, sag.capacity, sag.unit, sag.source, say)]
  }
  const closed = leastChange(ground, first)
  if (closed && campaign.days.every(day => day.lifts.every(lift => lift.section !== work.section))) {
    return [closedFinding(input, work, closed, first, units)]
  }
  const shut = neverOpen(ground, work, first, units)
  return [shut ?? weatherEnds(input, campaign, work, reached)]
}

/**
 * No known day has a stretch long enough for one layer: more weather of the same kind is no help. Says what blocks on the
 * day on which the limits, all of them, would have to give least.
 */
function neverOpen(ground: Ground, work: SectionWork, time: number, units: Units): Finding | undefined {
  const { input } = ground
  const { days } = prepareBounds(ground)
  if (days.some(({ runs, span }) => runs.some(([from, until]) => Math.min(span, until - from) >= time))) {
    return undefined
  }
  const minutes = (time / 60).toFixed(0)
  const begin = `No day of the ${ground.days.length} known has ${minutes} min open for a layer of section ${work.section}`
  const least = leastTogether(ground, time + input.crew.setUp + input.crew.washOut)
  const worst = least?.limits[0]
  if (!least || !worst) {
    const span = Math.max(0, ...days.map(day => day.span))
    const say = `${begin}, set-up and wash-out taken off the crew's day. Lengthen the day or the shift, or work on more days.`
    return fail('no-feasible-day', work.section, time, span, 's', 'the job', say)
  }
  const gives = least.limits.map(
    limit => `${limitName(limit.kind)} (${sayLimit(limit, units, input.timeZone)})`,
  )
  const together = gives.length > 1 ? ', together' : ''
  const say = `${begin}. The least change${together}: ${gives.join(' and ')} on ${least.day}.`
  return fail('no-feasible-day', work.section, worst.demand, worst.capacity, worst.unit, worst.source, say)
}

interface LeastTogether {
  readonly day: string
  /** The worst of each kind, the one furthest beyond first. */
  readonly limits: readonly Limit[]
  readonly share: number
}

/** The stretch of a crew's day that would be open if its limits gave least, all kinds together. */
function leastTogether(ground: Ground, time: number): LeastTogether | undefined {
  const count = Math.ceil(time / 3600)
  let best: LeastTogether | undefined
  for (const day of ground.days.filter(one => !one.off)) {
    const hours = ground.input.hours.filter(
      hour => hour.start >= day.opens && hour.start + 3600 <= day.closes,
    )
    for (let i = 0; i + count <= hours.length; i++) {
      const beyond = hours.slice(i, i + count).flatMap(hour => hour.limits.filter(isBeyond))
      const limits = worstOfEach(beyond)
      const share = limits.reduce((sum, limit) => sum + beyondBy(limit), 0)
      if (limits.length > 0 && (!best || share < best.share)) best = { day: day.date, limits, share }
    }
  }
  return best
}

const beyondBy = ({ demand, capacity }: Limit): number =>
  (demand - capacity) / Math.max(1e-9, Math.abs(capacity))

function worstOfEach(limits: readonly Limit[]): readonly Limit[] {
  const worst = new Map<LimitKind, Limit>()
  for (const limit of limits) {
    const known = worst.get(limit.kind)
    if (!known || beyondBy(limit) > beyondBy(known)) worst.set(limit.kind, limit)
  }
  return [...worst.values()].sort((a, b) => beyondBy(b) - beyondBy(a))
}

function firstLayerSags(ground: Ground, work: SectionWork, reached: number): Limit | undefined {
  const hour = ground.table.hours.find((one, i) => one && ground.table.use[i] !== 0)
  if (!hour) return undefined
  const answer = askStanding(ground.book, {
    section: work.section,
    firstLayer: reached + 1,
    start: hour.start,
    layerEnds: [hour.start + work.printTimes[reached]!],
    temperature: hour.mixTemperature,
  })
  return answer.layers < 1 ? answer.limit : undefined
}

/** The mildest relaxing of one limit that would open hours enough for one layer on some day. */
interface LeastChange {
  readonly limit: Limit
  readonly by: number
  readonly day: string
}

function leastChange(ground: Ground, time: number): LeastChange | undefined {
  const { crew } = ground.input
  const kinds = new Set(
    ground.input.hours.flatMap(hour => hour.limits.filter(isBeyond).map(limit => limit.kind)),
  )
  const changes = ground.days
    .filter(day => !day.off)
    .flatMap(day =>
      [...kinds].flatMap(kind => changeOnDay(ground, day, kind, time + crew.setUp + crew.washOut) ?? []),
    )
  return changes.sort((a, b) => relative(a) - relative(b))[0]
}

/** Limits have different units; a change is told by its share of what is allowed. */
const relative = ({ by, limit }: LeastChange): number => by / Math.max(1e-9, Math.abs(limit.capacity))

/** How far one limit alone would have to give for a run of hours long enough. */
function changeOnDay(ground: Ground, day: WorkDay, kind: LimitKind, time: number): LeastChange | undefined {
  const hours = ground.input.hours.filter(hour => hour.start >= day.opens && hour.start + 3600 <= day.closes)
  const count = Math.ceil(time / 3600)
  let best: LeastChange | undefined
  for (let i = 0; i + count <= hours.length; i++) {
    const beyond = hours.slice(i, i + count).flatMap(hour => hour.limits.filter(isBeyond))
    if (beyond.some(limit => limit.kind !== kind)) continue
    const worst = beyond.reduce<Limit | undefined>(
      (most, one) => (most && most.demand - most.capacity >= one.demand - one.capacity ? most : one),
      undefined,
    )
    if (!worst) return undefined
    const by = worst.demand - worst.capacity
    if (!best || by < best.by) best = { limit: worst, by, day: day.date }
  }
  return best
}

function closedFinding(
  input: CampaignInput,
  work: SectionWork,
  { limit, day }: LeastChange,
  time: number,
  units: Units,
): Finding {
  const minutes = (time / 60).toFixed(0)
  const say = `No day has ${minutes} min open for a layer of section ${work.section}. The least change: ${limitName(limit.kind)} on ${day} (${sayLimit(limit, units, input.timeZone)}).`
  return fail('no-feasible-day', work.section, limit.demand, limit.capacity, limit.unit, limit.source, say)
}

function weatherEnds(input: CampaignInput, campaign: Campaign, work: SectionWork, reached: number): Finding {
  const last = input.hours.at(-1)
  const until = last ? localTime(last.start, input.timeZone).date : input.calendar.firstDay
  const layers = work.printTimes.length
  const days = Math.max(1, calendarDays(campaign.days[0]?.date ?? input.calendar.firstDay, until))
  const done = campaign.days
    .flatMap(day => day.lifts)
    .reduce((sum, lift) => sum + lift.lastLayer - lift.firstLayer + 1, 0)
  const missing = input.work.reduce(
    (sum, one) => sum + one.printTimes.length - heightReached(input, campaign, one.section),
    0,
  )
  const more =
    done > 0 ? `; at this rate about ${Math.ceil((missing / done) * days)} days more are needed` : ''
  const say = `Section ${work.section} stands at layer ${reached} of ${layers} when the known weather ends on ${until}${more}. Give more weather.`
  return fail('weather-ends', work.section, layers, reached, 'layers', 'the job', say)
}

function dueFinding(input: CampaignInput, campaign: Campaign): readonly Finding[] {
  const { due } = input
  const last = campaign.days.at(-1)?.date
  if (due === undefined || last === undefined || (campaign.finished && last <= due)) return []
  const late = calendarDays(due, last)
  const say = campaign.finished
    ? `The walls are up on ${last}, ${late} ${late === 1 ? 'day' : 'days'} after ${due}. Try the levers.`
    : `The walls are not up by ${due}, nor while the weather is known.`
  return [{ ...fail('late', 'campaign', late, 0, 'days', 'the job', say), verdict: 'warn' }]
}

/** Pins for sections that are not there, and pins that cannot be kept, with what stands in their way. */
function pinFindings(input: CampaignInput, campaign: Campaign): readonly Finding[] {
  const names = input.work.map(({ section }) => section)
  const strange = new Set((input.pins ?? []).map(pin => pin.section).filter(name => !names.includes(name)))
  const unknown = [...strange].map(name => {
    const near = closestName(name, names)
    const hint = near ? `did you mean “${near}”?` : `sections are ${names.join(', ')}.`
    const say = `A pin names section “${name}”, which is not there; ${hint}`
    return fail('pin-unknown', name, 1, 0, 'sections', 'the job', say)
  })
  const broken = brokenPins(input, campaign).map(({ pin, limit, say }) =>
    fail(
      'pin-cannot-hold',
      `${pin.section}${pin.lift}`,
      limit.demand,
      limit.capacity,
      limit.unit,
      limit.source,
      say,
    ),
  )
  return [...unknown, ...broken]
}

/** Lifts of a layer or two are a sign that resting time and layer time do not go together. */
function crawlFindings(campaign: Campaign): readonly Finding[] {
  const lifts = campaign.days.flatMap(day => day.lifts)
  const sections = [...new Set(lifts.map(lift => lift.section))]
  return sections.flatMap((section): readonly Finding[] => {
    const own = lifts.filter(lift => lift.section === section)
    const short = own.filter(
      lift => lift.binding.kind === 'resting-time' && lift.lastLayer - lift.firstLayer < 2,
    )
    const worst = short[0]
    if (!worst || short.length * 2 < own.length) return []
    const { demand, capacity, source } = worst.binding
    const say = `Lifts of section ${section} end after a layer or two: a layer lies bare ${(demand / 60).toFixed(0)} min, bond allows ${(capacity / 60).toFixed(0)} min. Divide the section or print faster.`
    return [{ ...fail('crawls', section, demand, capacity, 's', source, say), verdict: 'warn' }]
  })
}

const fail = (
  check: string,
  at: string,
  demand: number,
  capacity: number,
  unit: string,
  source: string,
  say: string,
): Finding => ({ check: `campaign/${check}`, at, demand, capacity, unit, source, verdict: 'fail', say })
