import type { EmbedKind, Trade } from '../job/index.js'
import type { Instant, Metres } from '../quantity/index.js'

/** Who is called: a trade, the crew, or somebody from outside who has to have looked before it goes on. */
export type CalledTrade = Trade | 'inspector'

/** The moment a trade or the crew must be at the wall, with its window. */
export interface Call {
  /** Stable across re-plans: the embed's or lintel's id. */
  readonly id: string
  readonly trade: CalledTrade
  readonly what: EmbedKind | 'lintel' | 'pour' | 'inspection'
  readonly wall: string
  readonly section: string
  readonly lift: string
  readonly date: string
  readonly layerIn: number
  readonly layerOut: number
  /** When to be at the wall, and when it is too late. */
  readonly from: Instant
  readonly until: Instant
  /** For cuts: earliest clean cut, latest cut by knife. */
  readonly cut?: { readonly from: Instant; readonly until: Instant }
  /** No one moment suits the whole cut: it is made upwards in steps, the pump stopped while hands are at the wall. */
  readonly cutInSteps?: true
  /** `none`: the mix gives no moment for a clean cut; `unsure`: the window holds for the best estimate, not for its whole band. */
  readonly cutDoubt?: 'none' | 'unsure'
  /** Measured from a named corner: `1.35 m from wall W3's start, left face`. */
  readonly place: {
    readonly from: string
    readonly along: Metres
    readonly up: Metres
    readonly face: string
  }
  /** For somebody who is not on site: told by then, or may not come. */
  readonly tellBy?: Instant
  readonly tool: string
  readonly proof: string
}
