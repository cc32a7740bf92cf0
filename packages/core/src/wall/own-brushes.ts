import {
  type Bounds,
  distance,
  inflate,
  intersection,
  nearestOnPath,
  type Point,
  type Polygon,
  pathLength,
  pathPoint,
  pointBounds,
  pointStations,
  polygonArea,
  type Region,
  type Ring,
  subPath,
  unionRings,
} from '../geometry/index.js'
import type { Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { junctionTolerance } from './junction.js'
import { lateralStrip } from './strip.js'

/** A place at which a wall lies over itself, and the two stations that come together there. */
export interface OwnBrush {
  readonly place: Polygon
  readonly stations: readonly [Metres, Metres]
}

/** A straight or round piece of a wall. */
interface Leg extends Bounds {
  readonly from: Metres
  readonly to: Metres
  readonly ring: Ring
}

/** Where a wall comes back to itself nearer than it is thick, further along than round a corner. */
export function ownBrushes(wall: Wall): readonly OwnBrush[] {
  const legs = legsOf(wall)
  const found = legs.flatMap((leg, i) => legs.slice(i + 2).flatMap(other => sharedBy(wall, leg, other)))
  return unionRings(found.map(({ outer }) => outer))
    .filter(place => polygonArea(place) > junctionTolerance ** 2)
    .map(place => ({ place, stations: stationsAt(wall, legs, place) }))
}

function legsOf({ centreline, thickness }: Wall): readonly Leg[] {
  const stations = pointStations(centreline)
  return stations.slice(1).flatMap((to, i) => {
    const from = stations[i]!
    if (to - from < 1e-6) return []
    const ring = lateralStrip(centreline, from, to, -thickness / 2, thickness / 2)
    return [{ from, to, ring, ...pointBounds(ring) }]
  })
}

/** Along the wall from one station to another, the shorter way round a closed one. */
function along({ centreline }: Wall, a: Metres, b: Metres): Metres {
  const straight = Math.abs(b - a)
  return centreline.closed ? Math.min(straight, pathLength(centreline) - straight) : straight
}

function sharedBy(wall: Wall, a: Leg, b: Leg): Region {
  const isNear = [0, 1].every(
    axis =>
      a.least[axis]! < b.most[axis]! + junctionTolerance &&
      b.least[axis]! < a.most[axis]! + junctionTolerance,
  )
  if (!isNear || b.to - a.from < round(wall)) return []
  const both = intersection(unionRings([a.ring]), inflate(unionRings([b.ring]), junctionTolerance, 'mitre'))
  return both.filter(({ outer }) =>
    outer.some(corner => along(wall, stationOn(wall, a, corner), stationOn(wall, b, corner)) > round(wall)),
  )
}

/** How far along a wall its legs may lie over each other, being the two sides of a corner. */
const round = ({ thickness }: Wall): Metres => 3 * thickness

function stationOn({ centreline }: Wall, { from, to }: Leg, point: Point): Metres {
  return from + nearestOnPath(subPath(centreline, from, to), point).station
}

function stationsAt(wall: Wall, legs: readonly Leg[], { outer }: Polygon): readonly [Metres, Metres] {
  const [corner] = outer
  const near = legs
    .map(leg => stationOn(wall, leg, corner!))
    .sort((a, b) => away(wall, a, corner!) - away(wall, b, corner!))
  const [first] = near
  return [first!, near.find(other => along(wall, first!, other) > round(wall)) ?? first!]
}

const away = ({ centreline }: Wall, station: Metres, point: Point): Metres =>
  distance(pathPoint(centreline, station), point)
