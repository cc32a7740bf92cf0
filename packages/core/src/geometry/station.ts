import type { Metres } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { Path, Point } from './path.js'
import { distance, leftOf } from './point.js'
import {
  nearestShare,
  type Segment,
  segmentLength,
  segmentPart,
  segmentPoint,
  segmentsOf,
  segmentTangent,
} from './segment.js'

/** A station is the distance along a path from its start [m]. */
export const pathLength = (path: Path): Metres => measured(path).reduce((sum, { length }) => sum + length, 0)

export function pathPoint(path: Path, station: Metres): Point {
  const { segment, share } = locate(path, station)
  return segmentPoint(segment, share)
}

/** Unit vector along the path. At a corner: the segment that begins there. */
export function pathTangent(path: Path, station: Metres): Point {
  const { segment, share } = locate(path, station)
  return segmentTangent(segment, share)
}

/** Unit vector to the left of the path. */
export const pathNormal = (path: Path, station: Metres): Point => leftOf(pathTangent(path, station))

/** Stations of the points, the closing one included. */
export function pointStations(path: Path): readonly Metres[] {
  return [0, ...measured(path).map(({ station, length }) => station + length)]
}

/** The open path between two stations, from < to; a closed path may be passed through its start (to > length). */
export function subPath(path: Path, from: Metres, to: Metres): Path {
  assert(to > from, 'a part of a path ends after it starts')
  const length = pathLength(path)
  const parts =
    path.closed && to > length
      ? [...cut(path, from, length), ...cut(path, 0, to - length)]
      : cut(path, from, to)
  return chain(parts)
}

export function reversePath(path: Path): Path {
  const bulges = path.bulges.map(bulge => -bulge).reverse()
  const points = [...path.points].reverse()
  // A closed path keeps its first point first, so that a chosen start stays the start.
  return path.closed
    ? { points: [points.at(-1)!, ...points.slice(0, -1)], bulges, closed: true }
    : { points, bulges, closed: false }
}

export interface NearestOnPath {
  readonly station: Metres
  readonly point: Point
  readonly distance: Metres
}

export function nearestOnPath(path: Path, target: Point): NearestOnPath {
  let best: NearestOnPath | undefined
  for (const { segment, station, length, middle, reach } of measured(path)) {
    // Nothing of the segment is nearer than its middle less its reach.
    if (best && distance(middle, target) - reach > best.distance) continue
    const share = nearestShare(segment, target)
    const point = segmentPoint(segment, share)
    const away = distance(point, target)
    if (!best || away < best.distance) best = { station: station + share * length, point, distance: away }
  }
  assert(best, 'a path has at least one segment')
  return best
}

interface MeasuredSegment {
  readonly segment: Segment
  readonly station: Metres
  readonly length: Metres
  /** Middle of the chord, and how far from it any point of the segment lies at most. */
  readonly middle: Point
  readonly reach: Metres
}

/** Wythes and centrelines are asked for thousands of points: measured once, and forgotten with the path, which never changes. */
const measurements = new WeakMap<Path, readonly MeasuredSegment[]>()

function measured(path: Path): readonly MeasuredSegment[] {
  const known = measurements.get(path)
  if (known) return known
  let station = 0
  const made = segmentsOf(path).map((segment): MeasuredSegment => {
    const { start, end } = segment
    const length = segmentLength(segment)
    const middle: Point = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2]
    // to any of its points: half the ways from both ends at most, which together are no longer than the segment
    const each = { segment, station, length, middle, reach: length / 2 + 1e-9 }
    station += length
    return each
  })
  measurements.set(path, made)
  return made
}

/** Segments end to start, as one open path. */
export function chain(segments: readonly Segment[]): Path {
  assert(segments.length > 0, 'a path has at least one segment')
  return {
    points: [segments[0]!.start, ...segments.map(segment => segment.end)],
    bulges: segments.map(segment => segment.bulge),
    closed: false,
  }
}

function cut(path: Path, from: Metres, to: Metres): readonly Segment[] {
  const parts: Segment[] = []
  let station = 0
  for (const segment of segmentsOf(path)) {
    const length = segmentLength(segment)
    const [a, b] = [Math.max(0, from - station), Math.min(length, to - station)]
    if (b - a > 1e-9) parts.push(segmentPart(segment, snap(a / length), snap(b / length)))
    station += length
  }
  return parts
}

/** Cutting within a nanometre of a point cuts at the point, so that parts share it exactly. */
const snap = (share: number): number => (share < 1e-9 ? 0 : share > 1 - 1e-9 ? 1 : share)

function locate(path: Path, station: Metres): { segment: Segment; share: number } {
  const segments = measured(path)
  let left = station
  for (const { segment, length } of segments) {
    if (left < length) return { segment, share: Math.max(0, left / length) }
    left -= length
  }
  assert(segments.length > 0 && left < 1e-6, 'a station lies on its path')
  return { segment: segments.at(-1)!.segment, share: 1 }
}
