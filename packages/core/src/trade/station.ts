import { type Path, type Point, pathLength, pathPoint, pathTangent } from '../geometry/index.js'
import type { Metres, Radians } from '../quantity/index.js'

/** A place on a wall's centreline: where it is and which way the wall runs there. */
export interface StationPlace {
  readonly point: Point
  readonly heading: Radians
}

/**
 * The place `station` metres along a centreline. Before its start and past its end it goes straight on, so that what
 * sticks out of a wall by mistake can still be pointed at.
 */
export function placeAt(path: Path, station: Metres): StationPlace {
  const length = pathLength(path)
  const on = Math.min(length, Math.max(0, station))
  const [x, y] = pathPoint(path, on)
  const [dx, dy] = pathTangent(path, on)
  const over = station - on
  return { point: [x + over * dx, y + over * dy], heading: Math.atan2(dy, dx) }
}
