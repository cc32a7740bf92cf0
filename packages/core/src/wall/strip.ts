import {
  chain,
  flattenPath,
  offsetPath,
  type Path,
  type Point,
  pathLength,
  pathNormal,
  pathPoint,
  plus,
  pointStations,
  type Ring,
  type Segment,
  segmentsOf,
  subPath,
  times,
} from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'

/** A distance left of the centreline: constant, or following the station and sampled every `step`. */
export type Lateral = Metres | { readonly at: (station: Metres) => Metres; readonly step: Metres }

/** Neighbouring strips lap by this, so that no hair of a gap is left where they meet. */
export const stripLap: Metres = 1e-7

/** The part of the plan between two stations and two distances left of a centreline, as one ring. */
export function lateralStrip(centreline: Path, from: Metres, to: Metres, low: Metres, high: Metres): Ring {
  const length = pathLength(centreline)
  const part = subPath(centreline, Math.max(0, from), centreline.closed ? to : Math.min(length, to))
  return [...flattenPath(offsetPath(part, low)), ...[...flattenPath(offsetPath(part, high))].reverse()]
}

/**
 * Strips of a wall between two stations, one to a segment: they lap at the corners inside, and leave the wedges outside
 * to the corner patches.
 */
export function wallStrips(
  centreline: Path,
  from: Metres,
  to: Metres,
  low: Lateral,
  high: Lateral,
): readonly Ring[] {
  const stations = pointStations(centreline)
  return segmentsOf(centreline).flatMap((segment, i) => {
    const [start, end] = [Math.max(from, stations[i]!), Math.min(to, stations[i + 1]!)]
    if (end - start < 1e-9) return []
    const whole = start === stations[i] && end === stations[i + 1]
    const link = whole ? segment : segmentsOf(subPath(centreline, start, end))[0]!
    if (typeof low === 'number' && typeof high === 'number') return [plainStrip(link, low, high)]
    return [sampledStrip(centreline, link, start, end, low, high)]
  })
}

function plainStrip(link: Segment, low: Metres, high: Metres): Ring {
  const path = chain([link])
  const left = lapped(flattenPath(offsetPath(path, high)))
  return [...lapped(flattenPath(offsetPath(path, low))), ...[...left].reverse()]
}

/** Both ends drawn out along the line by the lap. */
function lapped(line: readonly Point[]): readonly Point[] {
  const drawn = [...line]
  drawn[0] = drawOut(line[1]!, line[0]!)
  drawn[line.length - 1] = drawOut(line.at(-2)!, line.at(-1)!)
  return drawn
}

function drawOut(inner: Point, outer: Point): Point {
  const length = Math.hypot(outer[0] - inner[0], outer[1] - inner[1])
  return length > 0
    ? plus(outer, times([outer[0] - inner[0], outer[1] - inner[1]], stripLap / length))
    : outer
}

function sampledStrip(
  centreline: Path,
  link: Segment,
  start: Metres,
  end: Metres,
  low: Lateral,
  high: Lateral,
): Ring {
  const face = (lateral: Lateral): readonly Point[] => {
    if (typeof lateral === 'number') return flattenPath(offsetPath(chain([link]), lateral))
    const count = Math.max(2, Math.ceil((end - start) / lateral.step))
    return Array.from({ length: count + 1 }, (_, k) => {
      // Half a nanometre inside, so that a corner's normal is this segment's own.
      const station = Math.min(end - 5e-10, Math.max(start, start + ((end - start) * k) / count))
      const normal = pathNormal(centreline, station)
      return plus(pathPoint(centreline, station), times(normal, lateral.at(station)))
    })
  }
  return [...lapped(face(low)), ...[...lapped(face(high))].reverse()]
}
