import type { Path, Point } from '@dawnlift/core/geometry'
import type { Metres } from '@dawnlift/core/quantity'
import type { DrawingNote, DrawingUnit } from '@dawnlift/document/job'

/** A line, arc, polyline, circle, ellipse or spline of the drawing. */
export interface DrawnPath {
  readonly layer: string
  /** The DXF name of the entity, e.g. `LWPOLYLINE`. */
  readonly entity: string
  readonly path: Path
  /** Name of the block it came in, if it did. */
  readonly block?: string
}

export interface DrawnText {
  readonly layer: string
  readonly point: Point
  readonly text: string
}

/** A block as it stands on the sheet, with its attributes by tag. */
export interface DrawnBlock {
  readonly layer: string
  readonly name: string
  readonly point: Point
  readonly attributes: Readonly<Record<string, string>>
  /** Box round its geometry; only the point when it has none. */
  readonly least: Point
  readonly most: Point
}

/** A plan as plain data, in metres, blocks unfolded. */
export interface Drawing {
  /** The format's version, e.g. `AC1027`. */
  readonly version: string
  readonly unit: DrawingUnit
  readonly metresPerUnit: Metres
  readonly paths: readonly DrawnPath[]
  readonly texts: readonly DrawnText[]
  readonly blocks: readonly DrawnBlock[]
  /** How many entities of each kind we do not read, e.g. `{ HATCH: 12 }`. */
  readonly leftOut: Readonly<Record<string, number>>
  readonly notes: readonly DrawingNote[]
  readonly least: Point
  readonly most: Point
}

export interface ReadOptions {
  /** What one drawing unit is; overrules what the drawing says. */
  readonly unit?: DrawingUnit
  /** Splines, ellipses and stretched arcs become lines no further than this from the curve [m]; 1 mm. */
  readonly curveWithin?: Metres
  /** The file's name, for messages. */
  readonly name?: string
}
