import type { LiftPin, Pin } from '../job/index.js'
import type { Limit } from '../limit/index.js'
import type { Campaign } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { checkPins } from './check-pins.js'
import { prepareGround } from './ground.js'
import { mostClosing } from './idle-days.js'
import { prepareBounds } from './lower-bound.js'
import { scheduleCampaign } from './schedule-campaign.js'

/** Why a pin cannot be kept, and the nearest days on which it could be. */
export interface BrokenPin {
  readonly pin: LiftPin
  /** What stands in the way on that day. */
  readonly limit: Limit
  readonly say: string
  /** Nearest dates, sooner and later, on which the same lift can be printed with everything else settled as it is. */
  readonly sooner?: string
  readonly later?: string
}

export interface MovedLift {
  /** The campaign with the lift pinned to the date, as far as it can be. */
  readonly campaign: Campaign
  /** The input with that pin: for keeping it. */
  readonly input: CampaignInput
  /** Empty: the lift is on its date, and all other pins hold. */
  readonly broken: readonly BrokenPin[]
}

/** See what breaks: the campaign planned anew with one lift on another date. Undefined for a lift of no section of the job. */
export function moveLift(input: CampaignInput, liftId: string, date: string): MovedLift | undefined {
  const section = sectionOf(input, liftId)
  const lift = section === undefined ? Number.NaN : Number(liftId.slice(section.length))
  if (section === undefined || !Number.isInteger(lift) || lift < 1) return undefined
  const moved = withPin(input, { kind: 'lift', section, lift, date })
  const campaign = scheduleCampaign(moved, 'brisk')
  return { campaign, input: moved, broken: brokenPins(moved, campaign) }
}

/** The longest name that begins the lift's id: sections may be called A and A1. */
const sectionOf = (input: CampaignInput, liftId: string): string | undefined =>
  input.work
    .map(({ section }) => section)
    .filter(section => liftId.startsWith(section) && /^\d+$/.test(liftId.slice(section.length)))
    .sort((a, b) => b.length - a.length)[0]

const withPin = (input: CampaignInput, pin: LiftPin): CampaignInput => ({
  ...input,
  pins: [...(input.pins ?? []).filter(other => !isSameLift(other, pin)), pin],
})

const isSameLift = (a: Pin, b: LiftPin): boolean =>
  a.kind === 'lift' && a.section === b.section && a.lift === b.lift

/** Pinned lifts that the campaign does not print as settled, each with what stands in its way. */
export function brokenPins(input: CampaignInput, campaign: Campaign): readonly BrokenPin[] {
  const pins = (input.pins ?? []).filter(pin => pin.kind === 'lift')
  return pins
    .filter(pin => checkPins({ ...input, pins: [pin] }, campaign).length > 0)
    .map(pin => {
      const limit = obstacle(input, pin)
      const near = nearestDates(input, pin)
      return { pin, limit, say: sayBroken(pin, limit, near), ...near }
    })
}

function isKept(input: CampaignInput, pin: LiftPin): boolean {
  const tried = withPin(input, pin)
  return checkPins(tried, scheduleCampaign(tried, 'quick')).length === 0
}

/** The section by itself, nothing else to wait for. */
const alone = (input: CampaignInput, section: string): CampaignInput => ({
  ...input,
  work: input.work.filter(work => work.section === section),
  pins: (input.pins ?? []).filter(pin => pin.section === section),
  ...(input.standing ? { standing: input.standing.filter(one => one.section === section) } : {}),
})

/** The first of what stands in the way: the day itself, its hours, the lifts below, the height asked for, then the others. */
function obstacle(input: CampaignInput, pin: LiftPin): Limit {
  const ground = prepareGround(input)
  const day = ground.days.find(({ date }) => date === pin.date)
  if (!day) return limitOf('permitted-hours', 1, 0, 'days', 'no weather known')
  if (day.off) return day.off
  const bounds = prepareBounds(ground)
  const isOpen = bounds.days[ground.days.indexOf(day)]!.runs.length > 0
  if (!isOpen) {
    return mostClosing(ground, day) ?? limitOf('shift', 1, 0, 'hours', 'the job')
  }
  const self = alone(input, pin.section)
  if (!isKept(self, pin)) return ownObstacle(self, pin)
  const { shared } = ground
  const s = input.work.findIndex(work => work.section === pin.section)
  const neighbours = new Set(shared[s]!.map(({ other }) => input.work[other]!.section))
  const linked = {
    ...input,
    work: input.work.filter(work => work.section === pin.section || neighbours.has(work.section)),
    pins: self.pins ?? [],
  }
  if (neighbours.size > 0 && !isKept(linked, pin)) {
    const { at, least } = shared[s]![0]!
    return limitOf('lintel-head', at + 1, least, 'layer', 'the job')
  }
  return limitOf('shift', 1, 0, 'lifts', 'other pins and sections')
}

/** What the section by itself lacks: days for the lifts below, or height on the day. */
function ownObstacle(self: CampaignInput, pin: LiftPin): Limit {
  const { pins = [], ...rest } = self
  const free = { ...rest, pins: pins.filter(other => other.kind === 'closed') }
  const before = (free.standing?.[0]?.lifts ?? 0) + daysOpen(free, pin.date)
  if (before < pin.lift) {
    return limitOf('overnight-cure', pin.lift, before, 'lifts', 'one lift of a section a day')
  }
  const tried = scheduleCampaign(withPin(free, { ...pin }), 'quick')
  const lift = tried.days.find(({ date }) => date === pin.date)?.lifts[0]
  if (pin.layers && lift) {
    const wanted = pin.layers.last - pin.layers.first + 1
    const has = lift.lastLayer - lift.firstLayer + 1
    return { ...lift.binding, demand: wanted, capacity: has, unit: 'layers' }
  }
  const layers = self.work[0]?.printTimes.length ?? 0
  return limitOf('top-of-wall', pin.lift, Math.min(layers, before), 'lifts', 'the job')
}

/** Days up to a date, itself included, on which the section alone could have a lift. */
function daysOpen(input: CampaignInput, date: string): number {
  const ground = prepareGround(input)
  const bounds = prepareBounds(ground)
  return ground.days.filter(
    (day, i) => day.date <= date && bounds.days[i]!.runs.length > 0 && !ground.pins[0]!.closed.has(day.date),
  ).length
}

function limitOf(kind: Limit['kind'], demand: number, capacity: number, unit: string, source: string): Limit {
  return { kind, demand, capacity, unit, source }
}

/** Days looked at either side of the one asked for. */
const LOOKED_AT = 10

function nearestDates(input: CampaignInput, pin: LiftPin): Pick<BrokenPin, 'sooner' | 'later'> {
  const dates = prepareGround(input)
    .days.filter(day => !day.off)
    .map(({ date }) => date)
  const keeps = (date: string) => {
    const { layers: _, ...plain } = pin
    return isKept(input, { ...plain, date })
  }
  const sooner = dates
    .filter(date => date < pin.date)
    .slice(-LOOKED_AT)
    .reverse()
    .find(keeps)
  const later = dates
    .filter(date => date > pin.date)
    .slice(0, LOOKED_AT)
    .find(keeps)
  return { ...(sooner === undefined ? {} : { sooner }), ...(later === undefined ? {} : { later }) }
}

function sayBroken(pin: LiftPin, limit: Limit, near: Pick<BrokenPin, 'sooner' | 'later'>): string {
  const name = `${pin.section}${pin.lift}`
  const dates = [near.sooner, near.later].filter(date => date !== undefined)
  const free =
    dates.length > 0
      ? `The nearest ${dates.length > 1 ? 'days it fits are' : 'day it fits is'} ${dates.join(' and ')}.`
      : `No day within ${LOOKED_AT} working days either side fits: drop the pin, or another one.`
  return `Lift ${name} cannot be printed on ${pin.date}${pin.layers ? ` with layers ${pin.layers.first} to ${pin.layers.last}` : ''}: ${sayObstacle(pin, limit)}. ${free}`
}

function sayObstacle({ section, lift }: LiftPin, { kind, demand, capacity, unit }: Limit): string {
  switch (kind) {
    case 'overnight-cure':
      return `section ${section} has ${capacity} ${capacity === 1 ? 'day' : 'days'} open by then, and needs one for each of ${demand} lifts`
    case 'lintel-head':
      return `section ${section} waits at layer ${demand - 1} for a neighbour that carries the same lintel`
    case 'top-of-wall':
      return `section ${section} has no lift ${lift} that day: it is up in fewer, or has too few layers`
    case 'shift':
      return unit === 'lifts' ? 'other pins and sections need the machine' : 'nobody works that day'
    case 'permitted-hours':
      return 'the hours of that day are closed or not known'
    default:
      return unit === 'layers'
        ? `${demand} layers are asked for, ${capacity} fit`
        : `${kind.replaceAll('-', ' ')} at ${demand.toFixed(1)} of ${capacity.toFixed(1)} ${unit} closes its hours`
  }
}
