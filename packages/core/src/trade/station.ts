import type { Path, Point } from '../geometry/index.js'
import type { Metres, Radians } from '../quantity/index.js'
import { assert } from '../result/index.js'

/** A place on a wall's centreline: where it is and which way the wall runs there. */
export interface StationPlace {
  readonly point: Point
  readonly heading: Radians
}

/** Length of a chain of lines and arcs. */
export const runLength = (path: Path): Metres =>
  path.bulges.reduce((sum, _, index) => sum + segmentOf(path, index).length, 0)

/** The place `station` metres along the chain; before its start and past its end it goes straight on. */
export function placeAt(path: Path, station: Metres): StationPlace {
  assert(path.points.length > 1, 'a wall has a centreline of two points or more')
  let left = station
  const last = path.bulges.length - 1
  for (let index = 0; index < last; index++) {
    const segment = segmentOf(path, index)
    if (left <= segment.length) return placeOn(segment, left)
    left -= segment.length
  }
  return placeOn(segmentOf(path, last), left)
}

/** Station and distance of the place on the chain nearest to a point (arcs followed by their chords' sixteenths). */
export function nearestStation(
  path: Path,
  point: Point,
): { readonly station: Metres; readonly distance: Metres } {
  let best = { station: 0, distance: Number.POSITIVE_INFINITY }
  let before = 0
  for (let index = 0; index < path.bulges.length; index++) {
    const segment = segmentOf(path, index)
    const pieces = segment.bulge === 0 ? 1 : 16
    for (let piece = 0; piece < pieces; piece++) {
      const from = placeOn(segment, (segment.length * piece) / pieces).point
      const to = placeOn(segment, (segment.length * (piece + 1)) / pieces).point
      const near = nearestOnChord(from, to, point)
      if (near.distance < best.distance)
        best = {
          station: before + (segment.length * (piece + near.share)) / pieces,
          distance: near.distance,
        }
    }
    before += segment.length
  }
  return best
}

/** Stations of the chain's points, its start and end included. */
export function pointStations(path: Path): readonly Metres[] {
  const stations = [0]
  for (let index = 0; index < path.bulges.length; index++)
    stations.push(stations[index]! + segmentOf(path, index).length)
  return stations
}

interface Segment {
  readonly from: Point
  readonly to: Point
  readonly bulge: number
  readonly length: Metres
}

function segmentOf(path: Path, index: number): Segment {
  const from = path.points[index]!
  const to = path.points[(index + 1) % path.points.length]!
  const bulge = path.bulges[index]!
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1])
  const length =
    bulge === 0 ? chord : (chord * (1 + bulge * bulge) * Math.atan(Math.abs(bulge))) / Math.abs(bulge)
  // chord·(1+b²)/(2|b|) is twice the radius; the included angle is 4·atan|b|; so length = radius · angle.
  return { from, to, bulge, length: bulge === 0 ? chord : length }
}

function placeOn(segment: Segment, along: Metres): StationPlace {
  const { from, to, bulge, length } = segment
  const chordHeading = Math.atan2(to[1] - from[1], to[0] - from[0])
  if (bulge === 0)
    return {
      point: [from[0] + along * Math.cos(chordHeading), from[1] + along * Math.sin(chordHeading)],
      heading: chordHeading,
    }
  const angle = 4 * Math.atan(bulge)
  const radius = length / Math.abs(angle)
  const turned = (along / length) * angle
  const first = chordHeading - angle / 2
  const reach = 2 * radius * Math.sin(Math.abs(turned) / 2)
  const towards = first + turned / 2
  return {
    point: [
      from[0] + Math.sign(along || 1) * reach * Math.cos(towards),
      from[1] + Math.sign(along || 1) * reach * Math.sin(towards),
    ],
    heading: first + turned,
  }
}

function nearestOnChord(from: Point, to: Point, point: Point): { share: number; distance: Metres } {
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const square = dx * dx + dy * dy
  const raw = square === 0 ? 0 : ((point[0] - from[0]) * dx + (point[1] - from[1]) * dy) / square
  const share = Math.min(1, Math.max(0, raw))
  return { share, distance: Math.hypot(from[0] + share * dx - point[0], from[1] + share * dy - point[1]) }
}
