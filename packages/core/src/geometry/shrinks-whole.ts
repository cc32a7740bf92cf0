import type { Metres } from '../quantity/index.js'
import type { Point, Polygon } from './path.js'
import { distance, dot, minus } from './point.js'
import { type Ring, regionRings, ringContains } from './ring.js'
import { tangled } from './tangle.js'

/** A corner that turns more, by its cosine, is cut off by a mitre of four distances: it does not come back. */
const sharpestMitre = -0.875
/** An edge this short may have turned round but for rounding. */
const shortest: Metres = 1e-7

/**
 * Whether a polygon comes back whole when it is shrunk by a distance and grown again, with mitres: no place of it is
 * thinner than twice the distance. Told from its edges alone, in a hundredth of the time the polygon engine takes to do
 * it: when all have moved inward, none has turned round or met another, and the holes still lie inside, they are the
 * outline of what is left. May say no of a polygon that does come back; never yes of one that does not.
 */
export function shrinksWhole(polygon: Polygon, by: Metres): boolean {
  const rings = regionRings([polygon]).flatMap(ring => movedRing(ring, by) ?? [])
  if (rings.length <= polygon.holes.length || tangled(rings)) return false
  const [outer, ...holes] = rings
  return holes.every(hole => ringContains(outer!, hole[0]!))
}

/** The ring with its edges moved to the left, into the material, as one item; nothing when that does not work out. */
function movedRing(ring: Ring, by: Metres): readonly [Ring] | undefined {
  const along = ring.map((point, i) => unit(point, ring[(i + 1) % ring.length]!))
  const corners: Point[] = []
  for (let i = 0; i < ring.length; i++) {
    const [[x, y], before, after] = [ring[i]!, along.at(i - 1)!, along[i]!]
    const cosine = dot(before, after)
    if (!(cosine > sharpestMitre)) return undefined
    const share = by / (1 + cosine)
    corners.push([x - (before[1] + after[1]) * share, y + (before[0] + after[0]) * share])
  }
  const turned = corners.some((start, i) => {
    const end = corners[(i + 1) % corners.length]!
    return dot(minus(end, start), along[i]!) < shortest
  })
  return turned ? undefined : [corners]
}

function unit(a: Point, b: Point): Point {
  const length = distance(a, b)
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
}
