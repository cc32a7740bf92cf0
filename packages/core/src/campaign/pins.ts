import type { LiftPin, Pin } from '../job/index.js'
import type { SectionWork } from './campaign.js'
import type { WorkDay } from './work-day.js'

/** One section's pins. `lifts`: lowest lift first. */
export interface SectionPins {
  readonly closed: ReadonlySet<string>
  readonly lifts: readonly LiftPin[]
}

export const pinsBySection = (
  work: readonly SectionWork[],
  pins: readonly Pin[] = [],
): readonly SectionPins[] =>
  work.map(({ section }) => {
    const own = pins.filter(pin => pin.section === section)
    return {
      closed: new Set(own.flatMap(pin => (pin.kind === 'closed' ? pin.dates : []))),
      lifts: own
        .filter((pin): pin is LiftPin => pin.kind === 'lift')
        .sort((a, b) => a.lift - b.lift || (a.date < b.date ? -1 : 1)),
    }
  })

/** Layers at which a lift has to end so that the pinned ones can be just as they are told. */
export const pinnedEnds = ({ lifts }: SectionPins): readonly number[] =>
  lifts.flatMap(({ layers }) => (layers ? [layers.first - 1, layers.last] : []))

/** Whether a section with so many lifts standing may be printed on this date: not closed, and its next lift not promised to a later one. */
export const isPermitted = ({ closed, lifts }: SectionPins, standing: number, date: string): boolean =>
  !closed.has(date) && !lifts.some(pin => pin.lift === standing + 1 && date < pin.date)

/** Whether the date is the day of the section's next lift, or the lifts below a pinned one are running out of days. */
export function isPressing(
  { lifts }: SectionPins,
  standing: number,
  days: readonly WorkDay[],
  day: number,
): boolean {
  const next = lifts.find(pin => pin.lift > standing)
  if (!next) return false
  const { date } = days[day]!
  if (date >= next.date) return next.lift === standing + 1 && date === next.date
  let left = next.lift - standing - 1
  for (let i = day; i < days.length && days[i]!.date < next.date; i++) if (!days[i]!.off) left--
  return left > -2
}

/** What stands of a section, as far as pins care. */
interface Height {
  readonly lifts: number
  readonly layer: number
}

/** Pins of this date that the day did not keep, and those of a section of so many layers that is now up without them. */
export function missedOn(
  { lifts }: SectionPins,
  before: Height,
  after: Height,
  date: string,
  layers: number,
): number {
  if (before.layer >= layers) return 0
  const isUp = after.layer >= layers
  return lifts.filter(pin =>
    pin.date === date ? !isKept(pin, before, after) : isUp && pin.lift > after.lifts && pin.date > date,
  ).length
}

function isKept({ lift, layers }: LiftPin, before: Height, after: Height): boolean {
  const isPrinted = before.lifts === lift - 1 && after.lifts === lift
  return isPrinted && (!layers || (before.layer === layers.first - 1 && after.layer === layers.last))
}

/**
 * Most layers the next lift may have so that enough are left for the lifts the pins speak of. `fewest`: lifts from here to
 * the top by the rule alone.
 */
export function pinnedWish(
  pins: SectionPins,
  standing: Height,
  layers: number,
  liftsLeft: Int32Array,
): number {
  const last = pins.lifts.at(-1)
  if (!last || last.lift <= standing.lifts) return Number.POSITIVE_INFINITY
  const next = pins.lifts.find(pin => pin.lift > standing.lifts)!
  const until = next.layers && next.lift > standing.lifts + 1 ? next.layers.first - 1 : layers
  const lifts = until === layers ? last.lift - standing.lifts : next.lift - standing.lifts - 1
  const fewest = liftsLeft[standing.layer]! - liftsLeft[until]!
  return fewest >= lifts ? Number.POSITIVE_INFINITY : Math.ceil((until - standing.layer) / Math.max(1, lifts))
}
