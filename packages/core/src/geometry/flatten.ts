import type { Metres, Radians } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { Path, Point } from './path.js'
import { arcOf, isStraight, type Segment, segmentsOf } from './segment.js'

/** Largest distance between an arc and the chords that stand for it: a twentieth of a millimetre. */
export const chordTolerance: Metres = 5e-5

/**
 * The path as points, arcs as chords that leave them by at most the tolerance.
 * An arc of radius R and n equal chords over the angle φ leaves its chords by R·(1 − cos(φ/2n)).
 */
export function flattenPath(path: Path, tolerance: Metres = chordTolerance): readonly Point[] {
  const points: Point[] = path.closed ? [] : path.points.slice(0, 1)
  for (const segment of segmentsOf(path)) points.push(...flattenSegment(segment, tolerance))
  if (path.closed) points.unshift(points.pop()!)
  return points
}

/** The segment's chord ends, its start left out. */
function flattenSegment(segment: Segment, tolerance: Metres): readonly Point[] {
  if (isStraight(segment)) return [segment.end]
  const { centre, radius, from, sweep } = arcOf(segment)
  const count = chordsOf(radius, sweep, tolerance)
  return Array.from({ length: count }, (_, i): Point => {
    if (i === count - 1) return segment.end
    const angle = from + sweep * ((i + 1) / count)
    return [centre[0] + Math.cos(angle) * radius, centre[1] + Math.sin(angle) * radius]
  })
}

export function chordCount(segment: Segment, tolerance: Metres): number {
  const { radius, sweep } = arcOf(segment)
  return chordsOf(radius, sweep, tolerance)
}

function chordsOf(radius: Metres, sweep: Radians, tolerance: Metres): number {
  assert(tolerance > 0, 'the chord tolerance is positive')
  const widest = 2 * Math.acos(Math.max(0, 1 - tolerance / radius))
  return Math.max(1, Math.ceil(Math.abs(sweep) / widest - 1e-9))
}
