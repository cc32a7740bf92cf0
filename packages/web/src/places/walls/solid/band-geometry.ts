import { BufferAttribute, BufferGeometry, ShapeUtils, Vector2 } from 'three'
import type { DrawnBand } from '../../../state/band-post.js'
import { sweptBeads } from './swept-bead.js'
import { thinned } from './thinned.js'

/** Every bead of a layer swept, its top at z = 0. */
export function beadGeometry(band: DrawnBand): BufferGeometry {
  const { positions, normals, indices } = sweptBeads(band.beads)
  return geometryOf(positions, normals, indices)
}

/** The walls of a band as a slab, one metre high with its top at z = 0, to be scaled: its sides, its top, and both. */
export interface BodyGeometry {
  readonly sides: BufferGeometry
  readonly top: BufferGeometry
}

type Ring = readonly (readonly [number, number])[]

/** A third of what a bead bulges: an outline coarser than this would be seen [m]. */
const drawnWithin = 0.005

/** Nobody sees a slab from below, and of slabs upon slabs only the uppermost has a top. */
export function bodyGeometry(band: DrawnBand): BodyGeometry {
  const body = band.body.map(({ outer, holes }) => ({
    outer: thinned(outer, drawnWithin),
    holes: holes.map(hole => thinned(hole, drawnWithin)),
  }))
  return {
    sides: sidesOf(
      body.flatMap(({ outer, holes }) => [turning(outer, 1), ...holes.map(each => turning(each, -1))]),
    ),
    top: topOf(body),
  }
}

/** The ring so that the concrete lies on its left. */
function turning(ring: Ring, way: 1 | -1): Ring {
  const area = ShapeUtils.area(ring.map(([x, y]) => new Vector2(x, y)))
  return area * way >= 0 ? ring : [...ring].reverse()
}

function sidesOf(rings: readonly Ring[]): BufferGeometry {
  const edges = rings.reduce((sum, ring) => sum + ring.length, 0)
  const positions = new Float32Array(edges * 12)
  const normals = new Float32Array(edges * 12)
  const indices = new Uint32Array(edges * 6)
  let edge = 0
  for (const ring of rings)
    ring.forEach(([ax, ay], i) => {
      const [bx, by] = ring[(i + 1) % ring.length]!
      const length = Math.hypot(bx - ax, by - ay) || 1
      const [nx, ny] = [(by - ay) / length, (ax - bx) / length]
      positions.set([ax, ay, -1, bx, by, -1, bx, by, 0, ax, ay, 0], edge * 12)
      normals.set([nx, ny, 0, nx, ny, 0, nx, ny, 0, nx, ny, 0], edge * 12)
      const a = edge * 4
      indices.set([a, a + 1, a + 2, a, a + 2, a + 3], edge * 6)
      edge += 1
    })
  return geometryOf(positions, normals, indices)
}

function topOf(body: readonly { readonly outer: Ring; readonly holes: readonly Ring[] }[]): BufferGeometry {
  const points: number[] = []
  const indices: number[] = []
  for (const { outer, holes } of body) {
    const first = points.length / 3
    // Holes the other way round than their outline, as the triangulation wants them.
    const rings = [turning(outer, 1), ...holes.map(hole => turning(hole, -1))]
    const flat = rings.map(ring => ring.map(([x, y]) => new Vector2(x, y)))
    for (const [x, y] of rings.flat()) points.push(x, y, 0)
    for (const triangle of ShapeUtils.triangulateShape(flat[0]!, flat.slice(1)))
      indices.push(...triangle.map(corner => first + corner))
  }
  const normals = new Float32Array(points.length)
  for (let at = 2; at < normals.length; at += 3) normals[at] = 1
  return geometryOf(new Float32Array(points), normals, new Uint32Array(indices))
}

function geometryOf(positions: Float32Array, normals: Float32Array, indices: Uint32Array): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  geometry.setAttribute('normal', new BufferAttribute(normals, 3))
  geometry.setIndex(new BufferAttribute(indices, 1))
  return geometry
}
