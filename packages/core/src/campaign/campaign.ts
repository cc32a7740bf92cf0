import type { Limit } from '../limit/index.js'
import type { CubicMetres, Instant, Metres, Seconds } from '../quantity/index.js'
import type { PrintHour } from '../weather/index.js'
import type { KnownGains } from './known-gains.js'

/** A planned stop of the nozzle after a layer is down. */
export interface Hold {
  readonly afterLayer: number
  readonly duration: Seconds
  readonly reason: 'lintel' | 'embed' | 'pour' | 'inspection'
  readonly ref: string
}

/** A layer after which a lift has to end, e.g. the top of a lintel. */
export interface LiftEnd {
  readonly afterLayer: number
  readonly reason: 'lintel' | 'pour' | 'top'
  readonly ref: string
}

/** What one section asks for, layer by layer (index 0 is layer 1). */
export interface SectionWork {
  readonly section: string
  readonly layerHeight: Metres
  readonly printTimes: readonly Seconds[]
  readonly lengths: readonly Metres[]
  readonly volumes: readonly CubicMetres[]
  readonly holds: readonly Hold[]
  readonly liftEnds: readonly LiftEnd[]
}

/** What the physics says of a lift as it would be printed. Injected into the scheduler. */
export interface LiftPhysics {
  /**
   * How many layers, of the layers asked for, stand, with the limit that stops the next one.
   * `layerEnds[i]` is the moment layer `firstLayer + i` is finished.
   */
  readonly standing: (lift: LiftTrial) => {
    readonly layers: number
    readonly limit: Limit
    readonly safety: number
  }
  /** Longest time a layer may lie bare at this moment before a cold joint [s], and what rules it. */
  readonly longestRest: (at: Instant) => { readonly seconds: Seconds; readonly limit: Limit }
  /** What earlier plans found by these physics. */
  readonly known?: KnownGains
}

export interface LiftTrial {
  readonly section: string
  readonly firstLayer: number
  readonly start: Instant
  readonly layerEnds: readonly Instant[]
  /** Mean mix temperature over the lift [°C]. */
  readonly temperature: number
}

/** One lift at its clock times. `layerEnds[i]`: layer `firstLayer + i` is down. */
export interface Lift {
  /** Section and running number, e.g. `B3`. */
  readonly id: string
  readonly section: string
  readonly firstLayer: number
  readonly lastLayer: number
  readonly start: Instant
  readonly end: Instant
  readonly layerEnds: readonly Instant[]
  readonly holds: readonly Hold[]
  readonly volume: CubicMetres
  readonly length: Metres
  /** Layers there would have been, had nothing stopped it: the rule height or what is left. */
  readonly wishedLayers: number
  readonly binding: Limit
  /** Other limits with what each alone would have allowed. */
  readonly runnersUp: readonly { readonly limit: Limit; readonly layers: number }[]
  readonly nextGain?: NextGain
  /** All levers that would buy layers of this lift, the best (`nextGain`) first. */
  readonly gains?: readonly NextGain[]
  /** Set when the lift could be taller but leaves the rest of the day to this section. */
  readonly leftFor?: string
  /** Safety factor on standing at the end of the lift. */
  readonly safety: number
  /** Shortest margin between the resting time and what bond allows, over the lift [s]. */
  readonly pauseBudget: Seconds
}

/** What relaxing the binding limit would buy. */
export interface NextGain {
  readonly lever:
    | 'chilled-water'
    | 'earlier-start'
    | 'faster-nozzle'
    | 'slower-pace'
    | 'taller-lift'
    | 'longer-shift'
    | 'night-start'
    | 'next-day'
  readonly setting: number
  readonly unit: string
  readonly layers: number
  /** Calendar days the whole campaign gains if the lever is pulled throughout, both planned by the plain rule. */
  readonly days: number
  readonly bindsNext: Limit
}

export interface PrintDay {
  /** Local date, `2026-07-14`. */
  readonly date: string
  readonly number: number
  /** Set-up begins, wash-out ends. */
  readonly start: Instant
  readonly end: Instant
  readonly lifts: readonly Lift[]
  /** Whether the chiller is on. */
  readonly chilled: boolean
}

export interface IdleDay {
  readonly date: string
  readonly why: Limit
}

export interface Campaign {
  readonly days: readonly PrintDay[]
  readonly idleDays: readonly IdleDay[]
  readonly finished: boolean
  readonly finish: Instant
  readonly hours: readonly PrintHour[]
  /** Proven lower bound on the number of print days, and how. */
  readonly bound: {
    readonly days: number
    readonly how: string
    /** No campaign can be up before this local date. */
    readonly date?: string
    /** Whether the campaign is up on that date, i.e. proven to be shortest. */
    readonly met?: boolean
  }
}
