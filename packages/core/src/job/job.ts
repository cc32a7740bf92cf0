import type { Machine } from '../machine/index.js'
import type { MixModel } from '../mix/index.js'
import type { Metres, Seconds } from '../quantity/index.js'
import type { Costs } from './costs.js'
import type { Aim, Pin } from './pin.js'
import type { Batching, Calendar, Crew, Rules, Site } from './site.js'
import type { Column, Embed, Opening, PrintRules, Wall } from './wall.js'

/** One building on one site, in SI, as every stage reads it. Made by `@dawnlift/document` from `job.yaml`. */
export interface Job {
  readonly name: string
  readonly revision: string
  readonly units: 'metric' | 'imperial'
  readonly site: Site
  readonly walls: readonly Wall[]
  readonly openings: readonly Opening[]
  readonly embeds: readonly Embed[]
  readonly columns: readonly Column[]
  readonly print: PrintRules
  readonly machine: Machine
  readonly mix: MixModel
  readonly batching: Batching
  readonly crew: Crew
  readonly calendar: Calendar
  readonly rules: Rules
  readonly costs: Costs
  /** Sections set by hand: stretches by wall and station. Empty: divide automatically. */
  readonly sections: readonly ManualSection[]
  /** Where the nozzle stops until somebody has looked. */
  readonly inspections?: readonly Inspection[]
  /** What the lead has settled of the days, and what counts first in choosing them: soonest, unless said. */
  readonly pins?: readonly Pin[]
  readonly aim?: Aim
  /** Cuts the lead forbids (opening or wall ids). */
  readonly noCutAt: readonly string[]
  /** `ownership` of the machine frame: where the building's origin lies in machine coordinates [m], and rotation [rad]. */
  readonly machineOrigin: {
    readonly x: number
    readonly y: number
    readonly z: number
    readonly turn: number
  }
}

/** A hold of the lift for an inspector. */
export interface Inspection {
  readonly id: string
  readonly wall: string
  /** Height over the slab at which the nozzle waits [m]. */
  readonly above: Metres
  readonly takes: Seconds
  readonly what: string
}

export interface ManualSection {
  readonly id: string
  readonly stretches: readonly { readonly wall: string; readonly from: number; readonly to: number }[]
}
