import { BufferAttribute, BufferGeometry, ExtrudeGeometry, Path as HolePath, Shape, Vector2 } from 'three'
import type { DrawnBand } from '../../../state/band-post.js'
import { sweptBeads } from './swept-bead.js'

/** Every bead of a layer swept, its top at z = 0. */
export function beadGeometry(band: DrawnBand): BufferGeometry {
  const { positions, normals, indices } = sweptBeads(band.beads)
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  geometry.setAttribute('normal', new BufferAttribute(normals, 3))
  geometry.setIndex(new BufferAttribute(indices, 1))
  return geometry
}

/** The walls of a band as a slab, one metre high with its top at z = 0, to be scaled. */
export function bodyGeometry(band: DrawnBand): BufferGeometry {
  const shapes = band.body.map(({ outer, holes }) => {
    const shape = new Shape(outer.map(([x, y]) => new Vector2(x, y)))
    shape.holes = holes.map(hole => new HolePath(hole.map(([x, y]) => new Vector2(x, y))))
    return shape
  })
  const geometry = new ExtrudeGeometry(shapes, { depth: 1, bevelEnabled: false, curveSegments: 1 })
  geometry.translate(0, 0, -1)
  return geometry
}
