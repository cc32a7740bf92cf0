import {
  DirectionalLight,
  Group,
  HemisphereLight,
  Mesh,
  MeshLambertMaterial,
  Plane,
  PlaneGeometry,
  Scene,
  Vector3,
} from 'three'
import type { BandPost } from '../../../state/band-post.js'
import { type BandMesh, bandMesh, type Detail, forget, paintsCutBy, partsOf, showBand } from './band-mesh.js'
import type { Ground, Standing } from './look.js'

/** The house as it stands at a moment of the campaign’s clock. */
export interface HouseScene {
  readonly scene: Scene
  /** The bands of a newer plan: only those that are new are built. */
  readonly take: (post: BandPost) => void
  /** Shows so many layers of each section, coloured. */
  readonly show: (standing: Standing) => void
  /** Cuts everything on the near side of a line across the house away; without one nothing is cut. */
  readonly cut: (at: number | undefined) => void
  /** The slab under the house as it is now. */
  readonly ground: (ground: Ground) => void
}

export function houseScene(detail: Detail, layerHeight: number): HouseScene {
  const scene = new Scene()
  const house = new Group()
  const cutting = new Plane(new Vector3(0, 1, 0), Number.POSITIVE_INFINITY)
  const paints = paintsCutBy(cutting)
  const slab = new Mesh(new PlaneGeometry(1, 1), new MeshLambertMaterial())
  scene.add(house, slab, ...lights())
  let bands = new Map<number, BandMesh>()
  let shown: Standing = {}
  let isCut = false
  const show = (standing: Standing) => {
    shown = standing
    for (const each of bands.values()) showBand(each, layerHeight, standing[each.section], isCut)
  }
  return {
    scene,
    take: ({ fresh, all }) => {
      for (const { number, section, band } of fresh) {
        const made = bandMesh(section, band, detail, layerHeight, paints)
        bands.set(number, made)
        house.add(...partsOf(made))
      }
      const still = new Set(all)
      for (const [number, each] of bands) if (!still.has(number)) forget(house, each)
      bands = new Map([...bands].filter(([number]) => still.has(number)))
      show(shown)
    },
    show,
    cut: at => {
      cutting.constant = at === undefined ? Number.POSITIVE_INFINITY : -at
      if (isCut === (at !== undefined)) return
      isCut = at !== undefined
      show(shown)
    },
    ground: ({ least, most, colour }) => {
      slab.scale.set(most[0] - least[0] + 2, most[1] - least[1] + 2, 1)
      slab.position.set((least[0] + most[0]) / 2, (least[1] + most[1]) / 2, -0.005)
      slab.material.color.set(colour)
    },
  }
}

function lights() {
  const sun = new DirectionalLight(0xffffff, 2.2)
  sun.position.set(-6, -9, 14)
  return [new HemisphereLight(0xffffff, 0x8a8f94, 1.5), sun]
}
