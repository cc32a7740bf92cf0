import type { Metres } from '../quantity/index.js'
import type { Path, Point } from './path.js'
import { distance } from './point.js'
import { type Segment, segmentLength, segmentMeetings, segmentPoint, segmentsOf } from './segment.js'

export interface Crossing {
  readonly point: Point
  /** Stations on the first and on the second path. */
  readonly stations: readonly [Metres, Metres]
}

/** Every point two paths share, once each; ends that touch count. */
export function pathCrossings(a: Path, b: Path): readonly Crossing[] {
  const found: Crossing[] = []
  for (const one of placed(a))
    for (const other of placed(b))
      for (const [s, t] of segmentMeetings(one.segment, other.segment)) {
        const point = segmentPoint(one.segment, s)
        if (found.some(crossing => distance(crossing.point, point) < 1e-7)) continue
        found.push({ point, stations: [one.from + s * one.length, other.from + t * other.length] })
      }
  return found
}

/** Points where a path meets itself other than by going on to the next segment. */
export function selfCrossings(path: Path): readonly Point[] {
  const links = placed(path)
  const total = links.reduce((sum, { length }) => sum + length, 0)
  const found: Point[] = []
  links.forEach((one, i) => {
    for (const other of links.slice(i + 1))
      for (const [s, t] of segmentMeetings(one.segment, other.segment)) {
        const apart = other.from + t * other.length - (one.from + s * one.length)
        const joined = apart < 1e-7 || (path.closed && total - apart < 1e-7)
        if (!joined) found.push(segmentPoint(one.segment, s))
      }
  })
  return found
}

function placed(path: Path): readonly { segment: Segment; from: Metres; length: Metres }[] {
  let from = 0
  return segmentsOf(path).map(segment => {
    const length = segmentLength(segment)
    from += length
    return { segment, from: from - length, length }
  })
}
