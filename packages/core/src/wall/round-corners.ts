import {
  filletPath,
  fitArcs,
  flattenPath,
  indexSegments,
  type Point,
  type Polygon,
  type Region,
  type Ring,
  regionRings,
  ringSegments,
} from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'

/**
 * Corners of the material that point outward, and those that point inward, rounded by their own radii. A single bead
 * that butts against another wall laps onto it, so its corners there stay full.
 */
export function roundCorners(region: Region, outward: Metres, inward: Metres, butts: Region = []): Region {
  if (outward === 0 && inward === 0) return region
  const edges = butts.length > 0 ? indexSegments(regionRings(butts).flatMap(ringSegments)) : undefined
  const radiusAt = (turn: number, corner: Point): Metres =>
    edges?.clearance(corner, 1e-5) !== undefined ? 0 : turn > 0 ? outward : inward
  const round = (ring: Ring): Ring => flattenPath(filletPath(fitArcs(ring, true), radiusAt))
  return region.map((polygon): Polygon => ({ outer: round(polygon.outer), holes: polygon.holes.map(round) }))
}
