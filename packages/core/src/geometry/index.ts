export { type Bounds, pathBounds, pointBounds } from './bounds.js'
export { type Crossing, pathCrossings, selfCrossings } from './crossing.js'
export { type GeometryOptions, initGeometry } from './engine.js'
export { filletPath, leastCorner } from './fillet.js'
export { bulgeThrough, circleThrough, fitArcs, fitTolerance } from './fit-arcs.js'
export { chordTolerance, flattenPath } from './flatten.js'
export { offsetPath, offsetSegment } from './offset-path.js'
export type { Path, Point, Polygon } from './path.js'
export {
  between,
  cross,
  direction,
  distance,
  dot,
  leftOf,
  meetingPoint,
  minus,
  plus,
  size,
  times,
  towards,
  turnBetween,
} from './point.js'
export {
  clipOpenLines,
  difference,
  type Ends,
  inflate,
  inset,
  intersection,
  type Join,
  type Region,
  stroke,
  union,
  unionRings,
} from './region.js'
export {
  nestRings,
  polygonArea,
  polygonCentroid,
  polygonContains,
  polygonRings,
  type Ring,
  regionArea,
  regionContains,
  regionRings,
  ringArea,
  ringContains,
  ringLength,
  ringSegments,
  tidyRing,
} from './ring.js'
export {
  type Arc,
  arcOf,
  isStraight,
  type Segment,
  segmentLength,
  segmentPoint,
  segmentsOf,
  segmentTangent,
} from './segment.js'
export { indexSegments, type SegmentIndex } from './segment-index.js'
export { shrinksWhole } from './shrinks-whole.js'
export {
  chain,
  type NearestOnPath,
  nearestOnPath,
  pathLength,
  pathNormal,
  pathPoint,
  pathTangent,
  pointStations,
  reversePath,
  subPath,
} from './station.js'
