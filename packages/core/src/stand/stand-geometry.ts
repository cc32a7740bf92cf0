import type { WebPattern } from '../job/index.js'
import type { Metres } from '../quantity/index.js'

/** What a stretch of wall is made of, as far as standing goes. */
export type StandMake =
  | { readonly kind: 'leaf'; readonly thickness: Metres }
  | {
      readonly kind: 'double'
      /** Face to face. */
      readonly thickness: Metres
      readonly bead: Metres
      readonly web: WebPattern
      /** Along the wall while the web goes over and back once. */
      readonly pitch: Metres
    }

/** Held sideways at both ends, at one, nowhere, or closed on itself. */
export type StandSupports = 'both' | 'one' | 'none' | 'ring'

/** A stretch of wall between what holds it: returns, corners, T-junctions; or its free edges: jambs, ends, section joints. */
export interface StandPanel {
  /** For people: `wall W1, 0.00–3.20 m`. */
  readonly place: string
  readonly wall: string
  readonly from: Metres
  readonly to: Metres
  /** Along the centreline. */
  readonly length: Metres
  /** Heights above the slab between which this stretch is whole. */
  readonly bottom: Metres
  readonly top: Metres
  readonly supports: StandSupports
  /** Of the centreline, when curved. */
  readonly radius?: Metres
  readonly make: StandMake
  /** Widest bays of its wythes between ties as printed, from height to height; none: the make-up's pitch holds. */
  readonly bays?: readonly { readonly bottom: Metres; readonly top: Metres; readonly width: Metres }[]
}

/** What standing needs to know of one section. */
export interface StandGeometry {
  readonly section: string
  readonly panels: readonly StandPanel[]
}
