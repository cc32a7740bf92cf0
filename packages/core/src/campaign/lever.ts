import { isBeyond, type LimitKind } from '../limit/index.js'
import type { PrintHour } from '../weather/index.js'
import type { NextGain, SectionWork } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'

export type LeverKind = NextGain['lever']

/** One thing the lead could change, with its setting in the unit of `leverUnits`. */
export interface Lever {
  readonly kind: LeverKind
  readonly setting: number
}

/**
 * What each setting means: the water's temperature; how much sooner the day starts; nozzle speed; how much longer a layer
 * takes; the new height rule; how much longer the shift is; the clock time a night shift starts; how many days later.
 */
export const leverUnits: Readonly<Record<LeverKind, string>> = {
  'chilled-water': '°C',
  'earlier-start': 's',
  'faster-nozzle': 'mm/s',
  'slower-pace': '%',
  'taller-lift': 'm',
  'longer-shift': 's',
  'night-start': 'h',
  'next-day': 'days',
}

/** The input with the lever pulled; undefined where it does not apply. `next-day` changes no input. */
export function pullLever(input: CampaignInput, { kind, setting }: Lever): CampaignInput | undefined {
  const { crew, rules, speed } = input
  switch (kind) {
    case 'chilled-water':
      return withChilledWater(input, setting)
    case 'earlier-start':
      if (setting > crew.dayStart) return undefined
      return { ...input, crew: { ...crew, dayStart: crew.dayStart - setting }, hours: allHours(input, []) }
    case 'night-start':
      return nightShift(input, setting * 3600)
    case 'longer-shift':
      return { ...input, crew: { ...crew, longestShift: crew.longestShift + setting } }
    case 'faster-nozzle':
      if (setting / 1000 > speed.most + 1e-9) return undefined
      return atSpeed(input, setting / 1000)
    case 'slower-pace':
      return atSpeed(input, speed.now / (1 + setting / 100))
    case 'taller-lift':
      return { ...input, rules: { ...rules, liftHeight: { value: setting, source: 'by permission' } } }
    case 'next-day':
      return undefined
  }
}

/**
 * Hours closed by nothing but a hot mix open when water of this temperature is cold enough for them; the mix is then
 * cooled just to its limit. The hours know what water that takes.
 */
function withChilledWater(input: CampaignInput, water: number): CampaignInput | undefined {
  const hours = changedOnce(input.hours, `water ${water}`, hour => {
    const beyond = hour.limits.filter(isBeyond)
    const hot = beyond[0]
    const isCurable = beyond.length === 1 && hot?.kind === 'mix-hot' && (hour.waterNeeded ?? -300) >= water
    return hour.open || !isCurable ? hour : { ...hour, mixTemperatureChilled: hot.capacity }
  })
  const isChanged = hours.some((hour, i) => hour !== input.hours[i])
  return isChanged ? { ...input, hours, chilledWater: water } : undefined
}

const changedHours = new WeakMap<readonly PrintHour[], Map<string, readonly PrintHour[]>>()

/** The same list for the same change of the same hours: what is worked out of them is not worked out again for the next plan. */
function changedOnce(
  hours: readonly PrintHour[],
  change: string,
  of: (hour: PrintHour) => PrintHour,
): readonly PrintHour[] {
  const known = changedHours.get(hours) ?? new Map<string, readonly PrintHour[]>()
  changedHours.set(hours, known)
  const changed = known.get(change) ?? hours.map(of)
  known.set(change, changed)
  return changed
}

/** A day as long as before that starts in the evening and runs through midnight, with lights on site. */
function nightShift(input: CampaignInput, dayStart: number): CampaignInput {
  const { crew } = input
  const span = (crew.dayEnd - crew.dayStart + 86400) % 86400
  const dayEnd = (dayStart + span) % 86400
  return { ...input, crew: { ...crew, dayStart, dayEnd }, hours: allHours(input, ['daylight']) }
}

/** The crew's hours are the day's start and end, which the lever moves; other limits of the hours stay. */
function allHours(input: CampaignInput, lifted: readonly LimitKind[]): readonly PrintHour[] {
  const moved = new Set<LimitKind>(['permitted-hours', ...lifted])
  return changedOnce(input.hours, `without ${[...moved].join()}`, hour => {
    if (!hour.limits.some(limit => moved.has(limit.kind) && isBeyond(limit))) return hour
    const limits = hour.limits.filter(limit => !moved.has(limit.kind))
    return { ...hour, limits, open: !limits.some(isBeyond) }
  })
}

/** Routes timed anew if the job can do that; else print times in proportion, which flatters corners and starts. */
function atSpeed(input: CampaignInput, speed: number): CampaignInput {
  const scaled = (work: SectionWork): SectionWork => ({
    ...work,
    printTimes: work.printTimes.map(time => (time * input.speed.now) / speed),
  })
  return {
    ...input,
    work: input.workAt?.(speed) ?? input.work.map(scaled),
    speed: { ...input.speed, now: speed },
  }
}

/** Settings worth trying, mildest first. */
export function leverSettings(input: CampaignInput, kind: LeverKind): readonly Lever[] {
  const { speed, rules } = input
  const settings: Readonly<Record<LeverKind, readonly number[]>> = {
    'chilled-water': [12, 8, 5],
    'earlier-start': [1800, 3600, 7200],
    'faster-nozzle': [1.25, 1.5].map(factor => Math.round(speed.now * factor * 1000)),
    'slower-pace': [10, 25, 50],
    'taller-lift': [1.1, 1.25, 1.5].map(factor => Number((rules.liftHeight.value * factor).toFixed(3))),
    'longer-shift': [3600, 7200],
    'night-start': [20],
    'next-day': [1],
  }
  return settings[kind].map(setting => ({ kind, setting }))
}

/** Levers that could move each limit. Where there is none, only the plan itself can change. */
export const leversFor: Readonly<Partial<Record<LimitKind, readonly LeverKind[]>>> = {
  'mix-hot': ['chilled-water', 'earlier-start', 'faster-nozzle', 'night-start', 'next-day'],
  'crew-heat': ['earlier-start', 'faster-nozzle', 'night-start', 'next-day'],
  evaporation: ['earlier-start', 'faster-nozzle', 'night-start', 'next-day'],
  wind: ['earlier-start', 'faster-nozzle', 'night-start', 'next-day'],
  gust: ['earlier-start', 'faster-nozzle', 'night-start', 'next-day'],
  rain: ['earlier-start', 'faster-nozzle', 'next-day'],
  'mix-cold': ['next-day'],
  'air-cold': ['next-day'],
  daylight: ['faster-nozzle', 'night-start', 'earlier-start'],
  'permitted-hours': ['earlier-start', 'faster-nozzle'],
  shift: ['longer-shift', 'earlier-start', 'faster-nozzle'],
  'resting-time': ['faster-nozzle'],
  collapse: ['slower-pace'],
  buckling: ['slower-pace'],
  'lift-height': ['taller-lift'],
}
