import Flatbush from 'flatbush'
import type { Metres } from '../quantity/index.js'
import { pointBounds } from './bounds.js'
import type { Path, Point } from './path.js'
import { distance } from './point.js'
import {
  isStraight,
  nearestShare,
  type Segment,
  segmentMeetings,
  segmentPoint,
  segmentsOf,
} from './segment.js'

/** Straight edges of many lines, searchable by distance: built once, asked often. */
export interface SegmentIndex {
  /** Smallest distance from a point to any edge, looking no further than `within`; nothing when all are further. */
  readonly clearance: (point: Point, within: Metres) => Metres | undefined
  /** Whether a path meets any edge, touching counted. */
  readonly meets: (path: Path) => boolean
}

export function indexSegments(segments: readonly Segment[]): SegmentIndex {
  if (segments.length === 0) return { clearance: () => undefined, meets: () => false }
  const tree = new Flatbush(segments.length)
  for (const { start, end } of segments) {
    const { least, most } = pointBounds([start, end])
    tree.add(least[0], least[1], most[0], most[1])
  }
  tree.finish()
  const clearance = ([x, y]: Point, within: Metres): Metres | undefined => {
    const nearby = tree.search(x - within, y - within, x + within, y + within)
    const away = nearby.map(i =>
      distance([x, y], segmentPoint(segments[i]!, nearestShare(segments[i]!, [x, y]))),
    )
    const least = Math.min(Infinity, ...away)
    return least <= within ? least : undefined
  }
  const meets = (path: Path): boolean =>
    segmentsOf(path).some(link =>
      tree.search(...boxOf(link)).some(i => segmentMeetings(link, segments[i]!).length > 0),
    )
  return { clearance, meets }
}

/** A box that holds the segment: its chord's, wider by the arc's rise. */
function boxOf(link: Segment): [number, number, number, number] {
  const { start, end, bulge } = link
  const rise = isStraight(link)
    ? 0
    : (Math.max(1, Math.abs(bulge)) * Math.abs(bulge) * distance(start, end)) / 2
  return [
    Math.min(start[0], end[0]) - rise,
    Math.min(start[1], end[1]) - rise,
    Math.max(start[0], end[0]) + rise,
    Math.max(start[1], end[1]) + rise,
  ]
}
