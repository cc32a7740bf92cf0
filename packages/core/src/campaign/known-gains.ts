import type { PrintHour } from '../weather/index.js'
import type { NextGain } from './campaign.js'

/** What a lever buys of one lift; the days the whole campaign gains by it come from elsewhere. */
export type LayerGain = Omit<NextGain, 'days'>

/** Next gains of lifts that earlier plans had, by all that they rest on: a plan hands them on to the next one. */
export interface KnownGains {
  /** All that tells a section from any other one: its routes at every speed, and how it stands. */
  readonly sectionNumber: (section: string) => number
  /** The gains under a key, made where there are none. Hours, with what is judged by them, are told apart as objects. */
  readonly gains: (
    hours: readonly PrintHour[],
    key: string,
    make: () => readonly LayerGain[],
  ) => readonly LayerGain[]
  /** The local date by which the walls are up by the plain rule, under a key. */
  readonly finish: (
    hours: readonly PrintHour[],
    key: string,
    make: () => string | undefined,
  ) => string | undefined
}
