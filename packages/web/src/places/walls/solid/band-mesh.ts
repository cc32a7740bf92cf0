import {
  BackSide,
  type BufferGeometry,
  Color,
  type Group,
  InstancedMesh,
  type Material,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  type Plane,
} from 'three'
import type { DrawnBand } from '../../../state/band-post.js'
import { beadGeometry, bodyGeometry } from './band-geometry.js'
import { type Course, coursesOf } from './courses.js'
import { rampColour } from './layer-colours.js'
import type { Standing } from './look.js'

/** `beads`: every bead swept; `bodies`: the walls as plain slabs, for machines that draw in software. */
export type Detail = 'beads' | 'bodies'

/** What bands are drawn in; `cutting` takes away what lies before it. */
export interface Paints {
  readonly concrete: Material
  /** The inside of what is cut open, in one flat tone as if it were full: of its sides from within, of its foot from above. */
  readonly cutFace: Material
  readonly cutFoot: Material
  /** What is still to come, as a breath of its outline: an empty slab at five in the morning says little. */
  readonly breath: Material
}

const cutTone = 0x4a5a63

export function paintsCutBy(cutting: Plane): Paints {
  const clippingPlanes = [cutting]
  return {
    concrete: new MeshLambertMaterial({ color: 0xffffff, clippingPlanes }),
    cutFace: new MeshBasicMaterial({ color: cutTone, side: BackSide, clippingPlanes }),
    cutFoot: new MeshBasicMaterial({ color: cutTone, clippingPlanes }),
    breath: new MeshLambertMaterial({
      color: 0x7b8a92,
      transparent: true,
      opacity: 0.13,
      depthWrite: false,
      clippingPlanes,
    }),
  }
}

/** One band: drawn once, an instance for each of its courses, a top on the last; and a breath of what is still to come. */
export interface BandMesh {
  readonly section: string
  readonly band: DrawnBand
  readonly courses: InstancedMesh
  /** The same courses from within, and what they stand on: shown while something is cut. */
  readonly inside: InstancedMesh
  readonly foot: Mesh
  /** On slabs, which have none of their own. */
  readonly top?: InstancedMesh
  readonly ghosts: readonly Mesh[]
}

export function bandMesh(
  section: string,
  band: DrawnBand,
  detail: Detail,
  layerHeight: number,
  paints: Paints,
): BandMesh {
  const { sides, top } = bodyGeometry(band)
  const layers = band.toLayer - band.fromLayer + 1
  const drawn = detail === 'beads' ? beadGeometry(band) : sides
  const courses = instances(drawn, paints.concrete, layers)
  const inside = new InstancedMesh(drawn, paints.cutFace, layers)
  inside.instanceMatrix = courses.instanceMatrix
  inside.frustumCulled = false
  const foot = new Mesh(top, paints.cutFoot)
  foot.position.z = (band.fromLayer - 1) * layerHeight
  const ghosts = [sides, top].map(geometry => {
    const ghost = new Mesh(geometry, paints.breath)
    ghost.scale.z = layers * layerHeight
    ghost.position.z = band.toLayer * layerHeight
    return ghost
  })
  const slabTop = detail === 'bodies' ? { top: instances(top, paints.concrete, 1) } : {}
  return { section, band, courses, inside, foot, ...slabTop, ghosts }
}

function instances(geometry: BufferGeometry, paint: Material, count: number): InstancedMesh {
  const mesh = new InstancedMesh(geometry, paint, count)
  // The bounding sphere of an instanced mesh would be worked out anew at every change of its courses.
  mesh.frustumCulled = false
  return mesh
}

export const partsOf = ({ courses, inside, foot, top, ghosts }: BandMesh): readonly Mesh[] => [
  courses,
  inside,
  foot,
  ...(top ? [top] : []),
  ...ghosts,
]

export function forget(house: Group, band: BandMesh): void {
  for (const part of partsOf(band)) {
    house.remove(part)
    part.geometry.dispose()
    if (part instanceof InstancedMesh) part.dispose()
  }
}

const place = new Matrix4()
const colour = new Color()

/** So much of a band as stands, each course in its colour; cut open, its inside too. */
export function showBand(
  { band, courses: mesh, inside, foot, top, ghosts }: BandMesh,
  layerHeight: number,
  section: Standing[string] | undefined,
  isCut: boolean,
): void {
  const courses: readonly Course[] = section ? coursesOf(band, section, top !== undefined) : []
  courses.forEach(({ toLayer, layers, share }, index) => {
    // Beads are drawn at their own height; slabs are one metre high until they are told otherwise.
    place.makeScale(1, 1, top ? layers * layerHeight : 1)
    place.setPosition(0, 0, toLayer * layerHeight)
    mesh.setMatrixAt(index, place)
    mesh.setColorAt(index, colour.setRGB(...rampColour(share)))
  })
  for (const each of [mesh, inside]) each.count = courses.length
  mesh.visible = courses.length > 0
  for (const each of [inside, foot]) each.visible = isCut && mesh.visible
  mesh.instanceMatrix.needsUpdate = true
  if (mesh.instanceColor) mesh.instanceColor.needsUpdate = true
  const last = courses.at(-1)
  if (top) {
    top.visible = last !== undefined
    if (last) {
      top.setMatrixAt(0, place.makeTranslation(0, 0, last.toLayer * layerHeight))
      top.setColorAt(0, colour.setRGB(...rampColour(last.share)))
      top.instanceMatrix.needsUpdate = true
      if (top.instanceColor) top.instanceColor.needsUpdate = true
    }
  }
  for (const ghost of ghosts) ghost.visible = (section?.layers ?? 0) < band.toLayer
}
