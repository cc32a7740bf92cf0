import type { Path, Point, Polygon } from '../geometry/index.js'
import type { CubicMetres, Metres, SquareMetres } from '../quantity/index.js'

/** What a bead does in the wall. */
export type BeadRole = 'wythe' | 'web' | 'closer' | 'fill' | 'line'

/** One unbroken deposit at constant height; centreline in the building frame at the top of the bead. */
export interface Bead {
  /** Stable within its section and band, e.g. `A.3.w1`. */
  readonly id: string
  readonly role: BeadRole
  readonly path: Path
  /** Width the flow is set for; beads of solid fill may be narrower than the nozzle's own. */
  readonly width: Metres
  readonly height: Metres
}

/** Consecutive layers of one section whose plan is the same. */
export interface Band {
  readonly fromLayer: number
  readonly toLayer: number
  readonly body: readonly Polygon[]
  readonly bodyArea: SquareMetres
  readonly beads: readonly Bead[]
  /** Places the beads do not cover, or where two beads would not fit. */
  readonly thinPlaces: readonly {
    readonly point: Point
    readonly area: SquareMetres
    /** What is wrong here; `sayThinPlace` has the words. */
    readonly kind: 'thin' | 'doubled' | 'void' | 'recess'
    /** Where beads lie on each other: what two of them need; two of the nozzle's own unless said. */
    readonly need?: Metres
    /** Of a recess: its name, the wall left behind it, and whether no bead at all fits there. */
    readonly recess?: { readonly ref: string; readonly left: Metres; readonly interrupted: boolean }
  }[]
}

/** All bands of one section, from its first layer to its last. */
export interface SectionBands {
  readonly section: string
  /** Up to its last material. */
  readonly layers: number
  readonly bands: readonly Band[]
  /** Bead volume of the whole section. */
  readonly volume: CubicMetres
}

/** A height moved to the nearest layer. */
export interface Snap {
  readonly what: string
  readonly asked: Metres
  readonly got: Metres
}
