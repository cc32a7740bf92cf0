import type { Metres } from '../quantity/index.js'

/** A point in the building frame: x to the right, y up the sheet [m]. */
export type Point = readonly [Metres, Metres]

/**
 * A chain of straight lines and circular arcs.
 * `bulges[i]` belongs to the segment from point i to point i+1 (the last one closes the loop when `closed`):
 * the tangent of a quarter of the included angle, positive turning left, 0 straight (as in DXF).
 */
export interface Path {
  readonly points: readonly Point[]
  /** As long as `points` when closed, one shorter when open. */
  readonly bulges: readonly number[]
  readonly closed: boolean
}

/** A region: outer ring counter-clockwise, holes clockwise, straight edges, not self-crossing. */
export interface Polygon {
  readonly outer: readonly Point[]
  readonly holes: readonly (readonly Point[])[]
}
