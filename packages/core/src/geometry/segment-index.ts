import Flatbush from 'flatbush'
import type { Metres } from '../quantity/index.js'
import { pointBounds } from './bounds.js'
import type { Point } from './path.js'
import { distance } from './point.js'
import { nearestShare, type Segment, segmentPoint } from './segment.js'

/** Straight edges of many lines, searchable by distance: built once, asked often. */
export interface SegmentIndex {
  /** Smallest distance from a point to any edge, looking no further than `within`; nothing when all are further. */
  readonly clearance: (point: Point, within: Metres) => Metres | undefined
}

export function indexSegments(segments: readonly Segment[]): SegmentIndex {
  if (segments.length === 0) return { clearance: () => undefined }
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
  return { clearance }
}
