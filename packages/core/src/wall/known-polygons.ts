import { type Polygon, type Region, type Ring, regionRings } from '../geometry/index.js'

/** Polygons already met. Equal ones become the same one, so that what is remembered of it serves every band it is part of. */
export interface KnownPolygons {
  readonly same: (region: Region) => Region
}

export function knownPolygons(met: Iterable<Polygon> = []): KnownPolygons {
  const byPrint = new Map<string, Polygon[]>()
  const same = (polygon: Polygon): Polygon => {
    const print = fingerprint(polygon)
    const alike = byPrint.get(print) ?? []
    const known = alike.find(other => equal(other, polygon))
    if (known) return known
    byPrint.set(print, [...alike, polygon])
    return polygon
  }
  for (const polygon of met) same(polygon)
  return { same: region => region.map(same) }
}

/** Of every polygon once: the same few are met again with every plan. */
const fingerprints = new WeakMap<Polygon, string>()

function fingerprint(polygon: Polygon): string {
  const known = fingerprints.get(polygon)
  if (known) return known
  let [count, sum] = [0, 0]
  for (const ring of regionRings([polygon]))
    for (const [x, y] of ring) {
      count += 1
      sum += count * (x + 1.7 * y)
    }
  const made = `${polygon.holes.length} ${count} ${sum}`
  fingerprints.set(polygon, made)
  return made
}

const equal = (a: Polygon, b: Polygon): boolean =>
  a === b ||
  (equalRings(a.outer, b.outer) &&
    a.holes.length === b.holes.length &&
    a.holes.every((hole, i) => equalRings(hole, b.holes[i]!)))

const equalRings = (a: Ring, b: Ring): boolean =>
  a.length === b.length && a.every(([x, y], i) => x === b[i]![0] && y === b[i]![1])
