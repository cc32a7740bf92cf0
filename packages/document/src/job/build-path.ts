import { bulgeThrough, distance, type Path, type Point } from '@dawnlift/core/geometry'
import type { z } from 'zod'
import type { Ledger } from './ledger.js'
import type { pathSchema } from './wall-schema.js'

type Corner = z.output<typeof pathSchema>[number]
type Arc = Exclude<Corner, readonly unknown[]>
type DocumentPath = readonly PropertyKey[]

const isPoint = (corner: Corner): corner is [number, number] => Array.isArray(corner)
/** Corners nearer than this are one corner written twice [m]. */
const SAME_POINT = 1e-6

/** A centreline from its corners; closed when the last corner is the first one. */
export function buildPath(corners: readonly Corner[], path: DocumentPath, ledger: Ledger): Path | undefined {
  const first = corners[0]
  if (!first || !isPoint(first))
    return ledger.wrong(
      'job/path-start',
      [...path, 0],
      'A path starts with a point, like [0 m, 0 m]; arcs come after it.',
    )
  const points: Point[] = [first]
  const bulges: number[] = []
  for (const [index, corner] of corners.slice(1).entries()) {
    const at = [...path, index + 1]
    const from = points.at(-1)!
    const to = isPoint(corner) ? corner : corner.to
    if (distance(from, to) < SAME_POINT) {
      ledger.wrong('job/zero-length', at, 'This corner lies on the one before; remove it.')
      continue
    }
    bulges.push(isPoint(corner) ? 0 : (arcBulge(from, corner, at, ledger) ?? 0))
    points.push(to)
  }
  if (points.length < 2) return undefined
  const closed = points.length > 2 && distance(points[0]!, points.at(-1)!) < SAME_POINT
  return { points: closed ? points.slice(0, -1) : points, bulges, closed }
}

function arcBulge(from: Point, arc: Arc, at: DocumentPath, ledger: Ledger): number | undefined {
  const ways = [arc.bulge, arc.through, arc.radius].filter(each => each !== undefined).length
  if (ways !== 1)
    return ledger.wrong(
      'job/arc',
      at,
      `An arc is given by one of bulge, through or radius; ${ways} of them stand here.`,
    )
  if (arc.bulge !== undefined) return arc.bulge
  if (arc.through) return bulgeThrough(from, arc.through, arc.to)
  return radiusBulge(from, arc, at, ledger)
}

/** The shorter arc of that radius: bulge = tan(sweep/4), sin(sweep/2) = half chord over radius. */
function radiusBulge(from: Point, arc: Arc, at: DocumentPath, ledger: Ledger): number | undefined {
  const chord = distance(from, arc.to)
  const radius = arc.radius ?? 0
  if (!arc.turn)
    return ledger.wrong('job/arc', at, 'An arc by radius also needs its turn: “left” or “right”.')
  if (radius < chord / 2 - 1e-9)
    return ledger.wrong(
      'job/arc',
      at,
      `A radius of ${ledger.said(radius)} cannot span ${ledger.said(chord)}; it must be at least half of it.`,
    )
  const bulge = Math.tan(Math.asin(Math.min(1, chord / 2 / radius)) / 2)
  return arc.turn === 'left' ? bulge : -bulge
}
