import type { Point } from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'

/** An uninterrupted piece of one wall between two stations. */
export interface Stretch {
  readonly wall: string
  readonly from: Metres
  readonly to: Metres
}

/** Where two sections meet: at an opening, a marked joint or a T-junction. */
export interface Joint {
  readonly wall: string
  readonly at: Metres
  readonly point: Point
  readonly kind: 'opening' | 'marked' | 'tee'
  readonly ref: string
}

/** The part of the plan printed round and round in one go. */
export interface Section {
  readonly id: string
  readonly stretches: readonly Stretch[]
  readonly joints: readonly Joint[]
}
