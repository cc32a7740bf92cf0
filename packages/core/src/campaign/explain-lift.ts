import { clockText } from '../clock/index.js'
import { type LimitKind, sayLimit, sayQuantity, type Units } from '../limit/index.js'
import type { Lift, NextGain } from './campaign.js'
import type { Lever } from './lever.js'

/** Words for a campaign's reasons. Everything the crew reads about why a lift ends is worded here or in `limit-words`. */

const layersOf = (count: number): string => `${count} ${count === 1 ? 'layer' : 'layers'}`
const daysOf = (count: number): string => `${count} ${count === 1 ? 'day' : 'days'}`

/** Short name of a limit, for lists: `what binds next: wind`. */
const limitNames: Readonly<Record<LimitKind, string>> = {
  'lift-height': 'the height rule',
  'lintel-head': 'a lintel',
  'pour-level': 'a pour',
  'top-of-wall': 'the top of the wall',
  'first-layer': 'the first layer',
  collapse: 'the strength of the fresh wall',
  buckling: 'the stiffness of the fresh wall',
  'resting-time': 'resting time',
  'mix-hot': 'a hot mix',
  'mix-cold': 'a cold mix',
  'air-cold': 'cold air',
  evaporation: 'drying',
  wind: 'wind',
  gust: 'gusts',
  rain: 'rain',
  'crew-heat': 'heat on the crew',
  daylight: 'daylight',
  'permitted-hours': 'permitted hours',
  shift: 'the shift',
  'overnight-cure': 'the overnight cure',
  delivery: 'the silo',
  'broken-off': 'a lift broken off',
}

export const limitName = (kind: LimitKind): string => limitNames[kind]

/** A lever with its setting: `chilled water at 8 °C`, `the day started 1.0 h earlier`. */
export function sayLever({ kind, setting }: Lever, units: Units): string {
  switch (kind) {
    case 'chilled-water':
      return `chilled water at ${sayQuantity(setting, '°C', units)}`
    case 'earlier-start':
      return `starting ${sayQuantity(setting, 's', units)} earlier`
    case 'faster-nozzle':
      return `a nozzle at ${sayQuantity(setting, 'mm/s', units)}`
    case 'slower-pace':
      return `layers ${setting} % slower`
    case 'taller-lift':
      return `a lift of ${sayQuantity(setting, 'm', units)} by permission`
    case 'longer-shift':
      return `a shift ${sayQuantity(setting, 's', units)} longer`
    case 'night-start':
      return `a night shift from ${String(Math.floor(setting)).padStart(2, '0')}:00 with lights`
    case 'next-day':
      return 'waiting for the next day'
  }
}

/** `chilled water at 8 °C buys 9 layers and a day; then the shift stops it`. */
export function sayGain(gain: NextGain, units: Units): string {
  const lever = sayLever({ kind: gain.lever, setting: gain.setting }, units)
  const days = gain.days > 0 ? ` and brings the finish ${daysOf(gain.days)} forward` : ''
  const next =
    gain.bindsNext.kind === 'top-of-wall'
      ? 'then the wall is up'
      : `then ${limitName(gain.bindsNext.kind)} stops it`
  return `${lever} buys ${layersOf(gain.layers)}${days}; ${next}`
}

/** Why a lift is as tall as it is, and what would make it taller, in one sentence for the crew. */
export function explainLift(lift: Lift, units: Units, zone: string): string {
  const got = lift.lastLayer - lift.firstLayer + 1
  const why = sayLimit(lift.binding, units, zone)
  const gain = lift.nextGain ? `; ${sayGain(lift.nextGain, units)}` : ''
  if (lift.leftFor !== undefined) {
    return `stops at layer ${got} of ${lift.wishedLayers} at ${clockText(lift.end, zone)} to leave the day to section ${lift.leftFor}`
  }
  if (got >= lift.wishedLayers) return `all ${layersOf(got)}: ${why}${gain}`
  return `stops at layer ${got} of ${lift.wishedLayers}: ${why}${gain}`
}

/** Other limits close behind: `the shift would have allowed 44 layers`. */
export const explainRunnersUp = (lift: Lift): readonly string[] =>
  lift.runnersUp.map(({ limit, layers }) => `${limitName(limit.kind)} alone would allow ${layersOf(layers)}`)
