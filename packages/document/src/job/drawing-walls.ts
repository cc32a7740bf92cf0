import type { Point } from '@dawnlift/core/geometry'
import type { Column, Embed, EmbedKind, MakeUp, Opening, Relief, Trade, Wall } from '@dawnlift/core/job'
import type { Metres } from '@dawnlift/core/quantity'

export interface WallType {
  readonly makeUp: MakeUp
  readonly thickness: Metres
  readonly base: Metres
  readonly top: Metres
  readonly relief?: Relief
}

export interface OpeningType {
  readonly kind: Opening['kind']
  readonly width?: Metres
  readonly sill: Metres
  readonly head?: Metres
  readonly lintel?: NonNullable<Opening['lintel']>
}

export interface EmbedType {
  readonly kind: EmbedKind
  readonly trade: Trade
  readonly face?: Embed['face']
  readonly bottom?: Metres
  readonly width?: Metres
  readonly height?: Metres
  readonly depth?: Metres
  readonly head?: NonNullable<Embed['head']>
  readonly method: Embed['method']
}

export interface ColumnType {
  readonly length?: Metres
  readonly thickness?: Metres
  readonly cover: Metres
}

/** What one layer of the drawing holds. `type` names a wall, opening, embed or column type of the job. */
export interface LayerUse {
  readonly is: 'walls' | 'openings' | 'embeds' | 'columns' | 'names' | 'ignore'
  readonly type?: string
}

export type DrawingUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft'

/** How the job reads its drawing. */
export interface DrawingMapping {
  readonly file: string
  readonly unit?: DrawingUnit
  /** The point of the drawing that becomes the building's origin [m]. */
  readonly origin: Point
  /** Ends closer than this are one point [m]. */
  readonly joinWithin: Metres
  /** Splines and ellipses become lines no further than this from the curve [m]. */
  readonly curveWithin: Metres
  readonly layers: Readonly<Record<string, LayerUse>>
  readonly wallTypes: Readonly<Record<string, WallType>>
  readonly openingTypes: Readonly<Record<string, OpeningType>>
  readonly embedTypes: Readonly<Record<string, EmbedType>>
  readonly columnTypes: Readonly<Record<string, ColumnType>>
}

/** Something in the drawing that was changed or left out, with its place [m]. */
export interface DrawingNote {
  readonly code: string
  readonly point: Point
  readonly say: string
}

/** What the drawing gives the job. */
export interface DrawingWalls {
  readonly walls: readonly Wall[]
  readonly openings: readonly Opening[]
  readonly embeds: readonly Embed[]
  readonly columns: readonly Column[]
  readonly notes: readonly DrawingNote[]
}
