import type { Metres, SquareMetres } from '../quantity/index.js'
import type { Point, Polygon } from './path.js'
import { cross, distance, minus } from './point.js'
import type { Segment } from './segment.js'

/** A closed chain of points, the last joined to the first; counter-clockwise round material. */
export type Ring = readonly Point[]

/** Signed: positive counter-clockwise. Summed about the first point, so that far-off plans lose no digits. */
export function ringArea(ring: Ring): SquareMetres {
  const origin = ring[0]
  if (!origin) return 0
  let twice = 0
  for (let i = 1; i + 1 < ring.length; i++)
    twice += cross(minus(ring[i]!, origin), minus(ring[i + 1]!, origin))
  return twice / 2
}

export const ringLength = (ring: Ring): Metres =>
  ring.reduce((sum, point, i) => sum + distance(point, ring[(i + 1) % ring.length]!), 0)

/** The edges of a ring, as segments. */
export const ringSegments = (ring: Ring): readonly Segment[] =>
  ring.map((start, i) => ({ start, end: ring[(i + 1) % ring.length]!, bulge: 0 }))

/** Rings of a polygon: the outer one, then its holes. */
export const polygonRings = (polygon: Polygon): readonly Ring[] => [polygon.outer, ...polygon.holes]
export const regionRings = (region: readonly Polygon[]): readonly Ring[] => region.flatMap(polygonRings)

export const polygonArea = (polygon: Polygon): SquareMetres =>
  polygonRings(polygon).reduce((sum, ring) => sum + ringArea(ring), 0)
export const regionArea = (region: readonly Polygon[]): SquareMetres =>
  region.reduce((sum, polygon) => sum + polygonArea(polygon), 0)

export function polygonCentroid(polygon: Polygon): Point {
  const origin = polygon.outer[0]!
  let [twice, x, y] = [0, 0, 0]
  for (const ring of polygonRings(polygon))
    ring.forEach((point, i) => {
      const [a, b] = [minus(point, origin), minus(ring[(i + 1) % ring.length]!, origin)]
      const part = cross(a, b)
      twice += part
      x += part * (a[0] + b[0])
      y += part * (a[1] + b[1])
    })
  return [origin[0] + x / (3 * twice), origin[1] + y / (3 * twice)]
}

/** Even–odd rule; a point on the edge may fall either way. */
export function ringContains(ring: Ring, [x, y]: Point): boolean {
  let inside = false
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [a, b] = [ring[i]!, ring[j]!]
    if (a[1] > y !== b[1] > y && x < ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]) + a[0]) inside = !inside
  }
  return inside
}

export const polygonContains = (polygon: Polygon, point: Point): boolean =>
  ringContains(polygon.outer, point) && !polygon.holes.some(hole => ringContains(hole, point))
export const regionContains = (region: readonly Polygon[], point: Point): boolean =>
  region.some(polygon => polygonContains(polygon, point))

/** Counter-clockwise rings become outer rings; each clockwise one becomes a hole of the smallest ring round it. */
export function nestRings(rings: readonly Ring[]): readonly Polygon[] {
  const outers = rings
    .filter(ring => ringArea(ring) > 0)
    .map(outer => ({ outer, area: ringArea(outer), holes: [] as Ring[] }))
    .sort((a, b) => a.area - b.area)
  for (const hole of rings.filter(ring => ringArea(ring) < 0))
    outers.find(({ outer, area }) => area > -ringArea(hole) && liesWithin(hole, outer))?.holes.push(hole)
  return outers.map(({ outer, holes }) => ({ outer, holes }))
}

/** A hole may touch its outer ring at a point, so the middles of its edges vote. */
function liesWithin(hole: Ring, outer: Ring): boolean {
  const middles = hole.slice(0, 5).map((point, i): Point => {
    const next = hole[(i + 1) % hole.length]!
    return [(point[0] + next[0]) / 2, (point[1] + next[1]) / 2]
  })
  return middles.filter(middle => ringContains(outer, middle)).length * 2 > middles.length
}

/**
 * Drops points that carry no shape: doubled ones, and ones nearer than the tolerance to the line through their
 * neighbours. The polygon engine leaves such points where edges overlapped; offsetting would turn them into slivers.
 */
export function tidyRing(ring: Ring, tolerance: Metres): Ring {
  let kept = ring
  for (let pass = 0; pass < 3; pass++) {
    const next = dropFlat(kept, tolerance)
    if (next.length === kept.length) break
    kept = next
  }
  return kept.length < 3 ? [] : kept
}

function dropFlat(ring: Ring, tolerance: Metres): Ring {
  // The leftmost point is a corner and stays: were the start open to doubt, it and its twin could drop each other.
  const line = fromLeftmost(ring)
  const kept: Point[] = line.slice(0, 1)
  for (let i = 1; i < line.length; i++) {
    const [before, point, after] = [kept.at(-1)!, line[i]!, line[(i + 1) % line.length]!]
    const span = distance(before, after)
    const off = span > 0 ? Math.abs(cross(minus(point, before), minus(after, before))) / span : 0
    if (distance(before, point) > tolerance && off > tolerance) kept.push(point)
  }
  return kept
}

function fromLeftmost(ring: Ring): Ring {
  let start = 0
  ring.forEach(([x, y], i) => {
    const [u, v] = ring[start]!
    if (x < u || (x === u && y < v)) start = i
  })
  return [...ring.slice(start), ...ring.slice(0, start)]
}
