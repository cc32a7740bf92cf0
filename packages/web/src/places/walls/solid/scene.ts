import {
  Color,
  DirectionalLight,
  Group,
  HemisphereLight,
  InstancedMesh,
  Matrix4,
  Mesh,
  MeshLambertMaterial,
  Plane,
  PlaneGeometry,
  Scene,
  Vector3,
} from 'three'
import type { BandPost, DrawnBand } from '../../../state/band-post.js'
import { beadGeometry, bodyGeometry } from './band-geometry.js'
import { type Course, coursesOf } from './courses.js'
import { rampColour } from './layer-colours.js'
import type { Ground, Standing } from './look.js'

/** `beads`: every bead swept; `bodies`: the walls as plain slabs, for machines that draw in software. */
export type Detail = 'beads' | 'bodies'

/** The house as it stands at a moment of the campaign’s clock. */
export interface HouseScene {
  readonly scene: Scene
  /** The bands of a newer plan: only those that are new are built. */
  readonly take: (post: BandPost) => void
  /** Shows so many layers of each section, coloured. */
  readonly show: (standing: Standing) => void
  /** Cuts everything on the near side of a line across the house away; without one nothing is cut. */
  readonly cut: (at: number | undefined) => void
}

/** One band: its plan drawn once, an instance for each of its courses; and a breath of it while it is still to come. */
interface BandMesh {
  readonly section: string
  readonly band: DrawnBand
  readonly mesh: InstancedMesh
  readonly ghost: Mesh
}

export function houseScene(detail: Detail, layerHeight: number, ground: Ground): HouseScene {
  const scene = new Scene()
  const house = new Group()
  const cutting = new Plane(new Vector3(0, -1, 0), Number.POSITIVE_INFINITY)
  const concrete = new MeshLambertMaterial({ color: 0xffffff, clippingPlanes: [cutting] })
  // What is still to come, as a breath of its outline: an empty slab at five in the morning says little.
  const breath = new MeshLambertMaterial({
    color: 0x7b8a92,
    transparent: true,
    opacity: 0.13,
    depthWrite: false,
    clippingPlanes: [cutting],
  })
  scene.add(house, slab(ground), ...lights())
  let bands = new Map<number, BandMesh>()
  let shown: Standing = {}
  const show = (standing: Standing) => {
    shown = standing
    for (const each of bands.values()) showBand(each, detail, layerHeight, standing[each.section])
  }
  return {
    scene,
    take: ({ fresh, all }) => {
      for (const { number, section, band } of fresh) {
        const made = bandMesh(section, band, detail, layerHeight, concrete, breath)
        bands.set(number, made)
        house.add(made.mesh, made.ghost)
      }
      const still = new Set(all)
      for (const [number, each] of bands) if (!still.has(number)) forget(house, each)
      bands = new Map([...bands].filter(([number]) => still.has(number)))
      show(shown)
    },
    show,
    cut: at => {
      cutting.constant = at ?? Number.POSITIVE_INFINITY
    },
  }
}

function bandMesh(
  section: string,
  band: DrawnBand,
  detail: Detail,
  layerHeight: number,
  concrete: MeshLambertMaterial,
  breath: MeshLambertMaterial,
): BandMesh {
  const body = bodyGeometry(band)
  const layers = band.toLayer - band.fromLayer + 1
  const mesh = new InstancedMesh(detail === 'beads' ? beadGeometry(band) : body, concrete, layers)
  const ghost = new Mesh(body, breath)
  ghost.scale.z = layers * layerHeight
  ghost.position.z = band.toLayer * layerHeight
  // The bounding sphere of an instanced mesh would be worked out anew at every change of its courses.
  mesh.frustumCulled = false
  return { section, band, mesh, ghost }
}

function forget(house: Group, { mesh, ghost }: BandMesh): void {
  house.remove(mesh, ghost)
  mesh.geometry.dispose()
  ghost.geometry.dispose()
  mesh.dispose()
}

const place = new Matrix4()
const colour = new Color()

function showBand(
  { band, mesh, ghost }: BandMesh,
  detail: Detail,
  layerHeight: number,
  section: Standing[string] | undefined,
): void {
  const courses: readonly Course[] = section ? coursesOf(band, section, detail === 'bodies') : []
  courses.forEach(({ toLayer, layers, share }, index) => {
    // Beads are drawn at their own height; slabs are one metre high until they are told otherwise.
    place.makeScale(1, 1, detail === 'bodies' ? (layers - 0.06) * layerHeight : 1)
    place.setPosition(0, 0, toLayer * layerHeight)
    mesh.setMatrixAt(index, place)
    mesh.setColorAt(index, colour.setRGB(...rampColour(share)))
  })
  mesh.count = courses.length
  mesh.visible = courses.length > 0
  mesh.instanceMatrix.needsUpdate = true
  if (mesh.instanceColor) mesh.instanceColor.needsUpdate = true
  ghost.visible = (section?.layers ?? 0) < band.toLayer
}

function lights() {
  const sun = new DirectionalLight(0xffffff, 2.2)
  sun.position.set(-6, -9, 14)
  return [new HemisphereLight(0xffffff, 0x8a8f94, 1.5), sun]
}

function slab({ least, most, colour: paint }: Ground): Mesh {
  const [width, depth] = [most[0] - least[0], most[1] - least[1]]
  const mesh = new Mesh(new PlaneGeometry(width + 2, depth + 2), new MeshLambertMaterial({ color: paint }))
  mesh.position.set((least[0] + most[0]) / 2, (least[1] + most[1]) / 2, -0.005)
  return mesh
}
