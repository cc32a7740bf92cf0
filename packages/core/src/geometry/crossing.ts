import type { Metres } from '../quantity/index.js'
import { type Bounds, pathBounds } from './bounds.js'
import type { Path, Point } from './path.js'
import { distance } from './point.js'
import { type Segment, segmentLength, segmentMeetings, segmentPoint, segmentsOf } from './segment.js'
import { chain } from './station.js'

export interface Crossing {
  readonly point: Point
  /** Stations on the first and on the second path. */
  readonly stations: readonly [Metres, Metres]
}

/** Every point two paths share, once each; ends that touch count. */
export function pathCrossings(a: Path, b: Path): readonly Crossing[] {
  const found: Crossing[] = []
  const others = placed(b)
  for (const one of placed(a))
    for (const other of others) {
      if (apartFrom(one, other)) continue
      for (const [s, t] of segmentMeetings(one.segment, other.segment)) {
        const point = segmentPoint(one.segment, s)
        if (found.some(crossing => distance(crossing.point, point) < 1e-7)) continue
        found.push({ point, stations: [one.from + s * one.length, other.from + t * other.length] })
      }
    }
  return found
}

/**
 * Meetings this close to where one segment goes on into the next are that joint: a line that touches its arc meets it,
 * by rounding, twice within √(10⁻¹² m²).
 */
const jointSlack: Metres = 1e-5

/** Points where a path meets itself other than by going on to the next segment. */
export function selfCrossings(path: Path): readonly Point[] {
  const links = placed(path)
  const total = links.reduce((sum, { length }) => sum + length, 0)
  const found: Point[] = []
  links.forEach((one, i) => {
    for (const other of links.slice(i + 1)) {
      if (apartFrom(one, other)) continue
      for (const [s, t] of segmentMeetings(one.segment, other.segment)) {
        const apart = other.from + t * other.length - (one.from + s * one.length)
        const joined = apart < jointSlack || (path.closed && total - apart < jointSlack)
        if (!joined) found.push(segmentPoint(one.segment, s))
      }
    }
  })
  return found
}

interface Placed {
  readonly segment: Segment
  readonly from: Metres
  readonly length: Metres
  readonly bounds: Bounds
}

function placed(path: Path): readonly Placed[] {
  let from = 0
  return segmentsOf(path).map(segment => {
    const length = segmentLength(segment)
    from += length
    return { segment, from: from - length, length, bounds: pathBounds(chain([segment])) }
  })
}

const apartFrom = ({ bounds: a }: Placed, { bounds: b }: Placed): boolean =>
  a.least[0] > b.most[0] + 1e-6 ||
  b.least[0] > a.most[0] + 1e-6 ||
  a.least[1] > b.most[1] + 1e-6 ||
  b.least[1] > a.most[1] + 1e-6
