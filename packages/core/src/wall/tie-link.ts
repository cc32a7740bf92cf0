import type { Metres } from '../quantity/index.js'

/** A vertex of a tie: station along the centreline and distance left of it. */
export type Place = readonly [station: Metres, away: Metres]

/** One link of a tie: straight, along the wall at its distance, or an arc through a place. */
export type Link =
  | { readonly to: Place; readonly how: 'straight' | 'along' }
  | { readonly to: Place; readonly via: Place }

/** A tie as links, one after the other. */
export interface Tie {
  readonly start: Place
  readonly links: readonly Link[]
}
