import type { CubicMetres, Kilograms, Metres, Seconds, SquareMetres } from '../quantity/index.js'

export interface Quantities {
  readonly beadLength: Metres
  readonly volume: CubicMetres
  readonly mass: Kilograms
  readonly dry: Kilograms
  readonly bags: number
  readonly water: Kilograms
  readonly printTime: Seconds
}

export interface Tally {
  readonly total: Quantities
  readonly byLift: readonly ({ readonly lift: string; readonly date: string } & Quantities)[]
  readonly byDay: readonly ({ readonly date: string } & Quantities)[]
  readonly wallFace: SquareMetres
  readonly cost: {
    readonly currency: string
    readonly lines: readonly { readonly what: string; readonly amount: number; readonly how: string }[]
    readonly total: number
    readonly perWallFace: number
  }
  /** Mixed but not in the wall, over all print days, and how it is reckoned. */
  readonly waste?: { readonly volume: CubicMetres; readonly how: string }
}
