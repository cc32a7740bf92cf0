import {
  type Bounds,
  cross,
  distance,
  dot,
  isStraight,
  minus,
  type Path,
  type Point,
  pathBounds,
  type Segment,
  segmentsOf,
  towards,
} from '@dawnlift/core/geometry'
import type { Wall } from '@dawnlift/core/job'
import type { DrawingNote } from '@dawnlift/document/job'
import { sayMillimetres, sayPlace } from './say-place.js'

/** Straight walls drawn over each other along a stretch: printed once, but seldom meant. One note a pair of walls. */
export function overlapNotes(walls: readonly Wall[]): readonly DrawingNote[] {
  const boxes = walls.map(wall => pathBounds(wall.centreline))
  return walls.flatMap((one, i) =>
    walls.slice(i + 1).flatMap((other, j): readonly DrawingNote[] => {
      if (!touch(boxes[i]!, boxes[i + 1 + j]!)) return []
      const found = pathOverlap(one.centreline, other.centreline, one.thickness / 2)
      // Up to a thickness two walls in line may overlap at their joint.
      if (!found || found.length <= one.thickness) return []
      const say = `Walls ${one.id} and ${other.id} lie on each other for ${sayMillimetres(found.length)} from ${sayPlace(found.point)}; they are printed once. Draw one of them shorter.`
      return [{ code: 'dxf/overlap', point: found.point, say }]
    }),
  )
}

const touch = (a: Bounds, b: Bounds): boolean =>
  a.least[0] <= b.most[0] + 1 &&
  b.least[0] <= a.most[0] + 1 &&
  a.least[1] <= b.most[1] + 1 &&
  b.least[1] <= a.most[1] + 1

interface Overlap {
  readonly point: Point
  readonly length: number
}

/** The longest stretch along which two paths run beside each other closer than `beside`. */
function pathOverlap(a: Path, b: Path, beside: number): Overlap | undefined {
  let longest: Overlap | undefined
  for (const one of segmentsOf(a))
    for (const other of segmentsOf(b)) {
      const found = segmentOverlap(one, other, beside)
      if (found && (!longest || found.length > longest.length)) longest = found
    }
  return longest
}

function segmentOverlap(a: Segment, b: Segment, beside: number): Overlap | undefined {
  if (!isStraight(a) || !isStraight(b)) return undefined
  const along = towards(a.start, a.end)
  const off = [b.start, b.end].map(point => cross(along, minus(point, a.start)))
  if (off.some(each => Math.abs(each) >= beside)) return undefined
  const stations = [b.start, b.end].map(point => dot(along, minus(point, a.start)))
  const from = Math.max(0, Math.min(...stations))
  const to = Math.min(distance(a.start, a.end), Math.max(...stations))
  if (to <= from) return undefined
  return { point: [a.start[0] + along[0] * from, a.start[1] + along[1] * from], length: to - from }
}
