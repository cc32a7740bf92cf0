import type { Metres } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { Path, Point } from './path.js'
import { distance, leftOf, meetingPoint, plus, times } from './point.js'
import {
  arcOf,
  isStraight,
  type Segment,
  segmentMeetings,
  segmentPart,
  segmentsOf,
  segmentTangent,
} from './segment.js'

/**
 * A path to the left of another at a distance (right when negative). Lines stay lines and arcs stay concentric arcs;
 * corners are mitred along the tangents outside, and trimmed where neighbours meet inside. An offset beyond the inner
 * radius of an arc is a Bug; segments further apart than neighbours are not trimmed against each other.
 */
export function offsetPath(path: Path, by: Metres): Path {
  const shifted = trimInside(
    segmentsOf(path).map(segment => offsetSegment(segment, by)),
    path.closed,
  )
  assert(shifted.length > 0, 'a path has at least one segment')
  const points: Point[] = []
  const bulges: number[] = []
  shifted.forEach((segment, i) => {
    const before = shifted[i - 1] ?? (path.closed ? shifted.at(-1) : undefined)
    const joint = before ? corner(before, segment) : [segment.start]
    points.push(...joint)
    // Round an arc's end the mitre adds straight links, so that the arc itself is not bent.
    for (let k = 1; k < joint.length; k++) bulges.push(0)
    bulges.push(segment.bulge)
  })
  if (!path.closed) points.push(shifted.at(-1)!.end)
  if (path.closed) return rotateFirst(points, bulges, corner(shifted.at(-1)!, shifted[0]!).length - 1)
  return { points, bulges, closed: false }
}

export function offsetSegment(segment: Segment, by: Metres): Segment {
  if (!isStraight(segment)) {
    const { radius, sweep } = arcOf(segment)
    assert(radius - Math.sign(sweep) * by > 0, 'an offset stays inside the radius of its arc')
  }
  const shift = (point: Point, share: number) =>
    plus(point, times(leftOf(segmentTangent(segment, share)), by))
  return { start: shift(segment.start, 0), end: shift(segment.end, 1), bulge: segment.bulge }
}

/** Inside a corner, neighbours of which one is an arc lie over each other: both end where they meet. */
function trimInside(shifted: readonly Segment[], closed: boolean): readonly Segment[] {
  const trimmed = [...shifted]
  for (let i = closed ? 0 : 1; i < trimmed.length && trimmed.length > 1; i++) {
    const k = (i + trimmed.length - 1) % trimmed.length
    const [before, after] = [trimmed[k]!, trimmed[i]!]
    if (distance(before.end, after.start) < 1e-9 || (isStraight(before) && isStraight(after))) continue
    // The meeting nearest to the corner on both.
    const [meeting] = [...segmentMeetings(before, after)].sort((a, b) => b[0] - b[1] - (a[0] - a[1]))
    if (!meeting) continue
    trimmed[k] = segmentPart(before, 0, meeting[0])
    trimmed[i] = segmentPart(after, meeting[1], 1)
  }
  return trimmed
}

/** The points that join two shifted segments: one where they touch or both are straight, else a mitre of two links. */
function corner(before: Segment, after: Segment): readonly Point[] {
  if (distance(before.end, after.start) < 1e-9) return [after.start]
  const mitre = meetingPoint(before.end, segmentTangent(before, 1), after.start, segmentTangent(after, 0))
  if (!mitre) return [before.end, after.start]
  if (isStraight(before) && isStraight(after)) return [mitre]
  return [before.end, mitre, after.start]
}

/** Puts the last of the closing corner's points first again, so that the first segment starts the path. */
function rotateFirst(points: readonly Point[], bulges: readonly number[], by: number): Path {
  const turn = <T>(list: readonly T[]): readonly T[] => [...list.slice(by), ...list.slice(0, by)]
  return { points: turn(points), bulges: turn(bulges), closed: true }
}
