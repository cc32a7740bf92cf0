import type { Aim, Calendar, Crew, Pin, Rules } from '../job/index.js'
import type { CubicMetres, Instant, Metres, MetresPerSecond } from '../quantity/index.js'
import type { PrintHour } from '../weather/index.js'
import type { LiftPhysics, SectionWork } from './campaign.js'

/** What the silo holds before the first day, and what arrives when. */
export interface Deliveries {
  readonly stock: CubicMetres
  readonly arrivals: readonly { readonly at: Instant; readonly volume: CubicMetres }[]
}

/** What really stands of one section. */
export interface SectionStanding {
  readonly section: string
  readonly layers: number
  /** When its last layer was laid. Without layers: nothing to wait for. */
  readonly lastEnd?: Instant
  /** Lifts it was printed in, so that new ones are numbered on from there. */
  readonly lifts?: number
}

/** Everything the scheduler reads. One machine, one crew, one shift a day. */
export interface CampaignInput {
  readonly work: readonly SectionWork[]
  /** Hour by hour from the first day on; printing stops where they end. */
  readonly hours: readonly PrintHour[]
  readonly physics: LiftPhysics
  readonly crew: Crew
  readonly rules: Rules
  readonly calendar: Calendar
  readonly timeZone: string
  /** Nozzle speed the print times were made with, and the most the machine can do. */
  readonly speed: { readonly now: MetresPerSecond; readonly most: MetresPerSecond }
  /** Temperature the chiller reaches [°C]; absent without a chiller. */
  readonly chilledWater?: number
  /** Times the routes anew at another nozzle speed; without it, print times are scaled. */
  readonly workAt?: (speed: MetresPerSecond) => readonly SectionWork[]
  readonly deliveries?: Deliveries
  /** When today's shift began, if it has: it ends after `longestShift` all the same. */
  readonly shiftBegan?: Instant
  readonly standing?: readonly SectionStanding[]
  /** Local date by which the walls are wanted. */
  readonly due?: string
  /** What the lead has settled. */
  readonly pins?: readonly Pin[]
  /** What counts first in choosing the days; `soonest` where absent. */
  readonly aim?: Aim
  /** What a print day of the machine, the mix washed out on it and an hour of the whole crew cost, for `cheapest`. */
  readonly prices?: {
    readonly machinePerDay: number
    readonly crewPerHour: number
    readonly washedOutPerDay?: number
  }
}

/**
 * Layers a lift may have by the height rule: n = ⌊lift height / layer height⌋.
 *
 * Source   closed form; a billionth keeps a whole number of layers whole.
 * Range    both heights > 0.
 * Assumes  every layer of the lift is as high as the first.
 */
export const layersByRule = (liftHeight: Metres, layerHeight: Metres): number =>
  Math.floor(liftHeight / layerHeight + 1e-9)
