import type { Instant } from '../quantity/index.js'

/** The crew began its shift. */
export interface ShiftBegan {
  readonly kind: 'shift'
  readonly at: Instant
}

/** A layer of a section is down; all below it are too. */
export interface LayerDown {
  readonly kind: 'layer'
  readonly at: Instant
  readonly section: string
  readonly layer: number
}

/** Part of a section was taken down again, to this layer. 0: all of it. */
export interface TakenDown {
  readonly kind: 'taken-down'
  readonly at: Instant
  readonly section: string
  readonly layer: number
}

/** The nozzle stopped; without `until` it still does. */
export interface Stopped {
  readonly kind: 'stop'
  readonly at: Instant
  readonly until?: Instant
  readonly cause: string
}

export interface Noted {
  readonly kind: 'note'
  readonly at: Instant
  readonly text: string
}

/** One thing that happened on site. Events are only ever added; a wrong one is struck by a later line. */
export type SiteEvent = ShiftBegan | LayerDown | TakenDown | Stopped | Noted

/** In the order they happened: the crew may write them down in the evening. */
export const inOrder = (events: readonly SiteEvent[]): readonly SiteEvent[] =>
  [...events].sort((a, b) => a.at - b.at)
