import type { Path } from '../geometry/index.js'
import type { Metres, Share } from '../quantity/index.js'

/** How the tie between two wythes runs inside the cavity. */
export type WebPattern = 'zigzag' | 'crosstie' | 'wave'

export type MakeUp =
  | { readonly kind: 'single' }
  | { readonly kind: 'double'; readonly web: WebPattern; readonly webPitch: Metres }
  | { readonly kind: 'solid' }

/** Parametric relief: the face moves by d(s, z) inside ±depth. */
export interface Relief {
  readonly face: 'left' | 'right'
  readonly pattern: 'flute' | 'ripple' | 'lozenge'
  readonly depth: Metres
  readonly pitch: Metres
  readonly rise: Metres
  /** Stations between which the relief ramps from nothing to full depth. */
  readonly ramp?: readonly [Metres, Metres]
}

/** A wall: its centreline in the building frame, its make-up and its height above the slab. */
export interface Wall {
  readonly id: string
  readonly name: string
  readonly centreline: Path
  readonly makeUp: MakeUp
  /** Overall thickness, face to face; equals the bead width for `single`. */
  readonly thickness: Metres
  readonly base: Metres
  readonly top: Metres
  readonly relief?: Relief
  /** Where a joint may divide this wall, stations [m]; openings always may unless the job forbids it. */
  readonly joints: readonly Metres[]
}

/** A hole through a wall, from sill to head, in its rough size. */
export interface Opening {
  readonly id: string
  readonly wall: string
  readonly kind: 'door' | 'window' | 'passage'
  /** Station of the middle along the wall's centreline [m]. */
  readonly at: Metres
  readonly width: Metres
  readonly sill: Metres
  readonly head: Metres
  /** Set flush into the finished lift: its underside is the head, its top ends a lift. */
  readonly lintel?: {
    readonly height: Metres
    readonly bearing: Metres
    readonly kind: 'precast' | 'steel' | 'timber'
  }
}

export type EmbedKind = 'box' | 'sleeve' | 'pipe' | 'strap' | 'anchor' | 'niche' | 'chase' | 'plate'
export type Trade = 'electrical' | 'plumbing' | 'hvac' | 'structure' | 'joinery' | 'crew'

/** Anything set in or cut into the wall. */
export interface Embed {
  readonly id: string
  readonly wall: string
  readonly kind: EmbedKind
  readonly trade: Trade
  /** `left` and `right` looking along the centreline from its start; `middle` lies in the cavity. */
  readonly face: 'left' | 'right' | 'middle' | 'through'
  /** Station of the middle [m]. */
  readonly at: Metres
  /** Underside above the slab [m]. */
  readonly bottom: Metres
  readonly width: Metres
  readonly height: Metres
  readonly depth: Metres
  /** Of a niche or chase left as a gap: `corbelled` closes within its height, layer by layer; flat unless said. */
  readonly head?: 'corbelled'
  /** `gap`: the bead goes round it; `cut`: sliced from the soft wall; `set`: laid on a layer and printed over. */
  readonly method: 'gap' | 'cut' | 'set'
}

/** A column cast inside the wall: the cavity over `length` is closed off by cross ties and stays clear. */
export interface Column {
  readonly id: string
  readonly wall: string
  readonly at: Metres
  readonly length: Metres
  /** Face-to-face thickness of the wall at the column; more than the wall's own makes a pier. */
  readonly thickness: Metres
  /** Cage cover to the printed shell [m]. */
  readonly cover: Metres
}

/** What a bead may do. */
export interface PrintRules {
  readonly beadWidth: Metres
  readonly layerHeight: Metres
  readonly cornerRadius: Metres
  /** Largest sideways step of a layer over the one below, as a share of the bead width. */
  readonly overhang: Share
  readonly speed: number
}
