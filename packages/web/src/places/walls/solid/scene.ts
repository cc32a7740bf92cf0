import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  ExtrudeGeometry,
  Group,
  HemisphereLight,
  Path as HolePath,
  InstancedMesh,
  Matrix4,
  Mesh,
  MeshLambertMaterial,
  Plane,
  PlaneGeometry,
  Scene,
  Shape,
  Vector2,
  Vector3,
} from 'three'
import { type ColourBy, layerShare, rampColour } from './layer-colours.js'
import { type LayerClock, layerClock, standingLayers } from './standing-layers.js'
import { sweptBeads } from './swept-bead.js'

/** One band: its plan drawn once, an instance for each of its layers. */
interface BandMesh {
  readonly section: string
  readonly fromLayer: number
  readonly toLayer: number
  readonly mesh: InstancedMesh
}

/** The house as it stands at a moment of the campaign's clock. */
export interface HouseScene {
  readonly scene: Scene
  /** Shows what stands at this moment, coloured. */
  readonly show: (moment: Instant, by: ColourBy) => void
  /** Cuts everything on the near side of a line across the house away; 1 cuts nothing. */
  readonly cut: (share: number) => void
  readonly centre: Vector3
  readonly size: number
  readonly dispose: () => void
}

/** `beads`: every bead swept; `bodies`: the walls as plain slabs, for machines that draw in software. */
export type Detail = 'beads' | 'bodies'

export function houseScene(plan: Plan, detail: Detail, ground: string): HouseScene {
  const scene = new Scene()
  const clock = layerClock(plan)
  const shares = new Map<ColourBy, ReturnType<typeof layerShare>>()
  const cutting = new Plane(new Vector3(0, -1, 0), Number.POSITIVE_INFINITY)
  const material = new MeshLambertMaterial({ color: 0xffffff, clippingPlanes: [cutting] })
  const house = new Group()
  const bands = plan.bands.flatMap(({ section, bands: own }) =>
    own.map(band => bandMesh(plan, section, band, detail, material)),
  )
  for (const { mesh } of bands) house.add(mesh)
  scene.add(house, ghostOf(plan, cutting), ...lights())
  const { centre, size, width, depth, least, most } = boundsOf(plan)
  scene.add(slab(centre, width, depth, ground))
  return {
    scene,
    centre,
    size,
    show: (moment, by) => {
      let share = shares.get(by)
      if (!share) {
        share = layerShare(plan, clock, by)
        shares.set(by, share)
      }
      for (const band of bands) showBand(band, clock, moment, share)
    },
    cut: part => {
      cutting.constant = part >= 1 ? Number.POSITIVE_INFINITY : least + (most - least) * part
    },
    dispose: () => {
      for (const { mesh } of bands) {
        mesh.geometry.dispose()
        mesh.dispose()
      }
      material.dispose()
    },
  }
}

/** What is still to come, as a breath of its outline: an empty slab at five in the morning says little. */
function ghostOf(plan: Plan, cutting: Plane): Group {
  const height = plan.job.print.layerHeight
  const ghost = new Group()
  const material = new MeshLambertMaterial({
    color: 0x7b8a92,
    transparent: true,
    opacity: 0.13,
    depthWrite: false,
    clippingPlanes: [cutting],
  })
  for (const { bands } of plan.bands) {
    for (const band of bands) {
      const geometry = bodyGeometry(band, (band.toLayer - band.fromLayer + 1) * height)
      const mesh = new Mesh(geometry, material)
      mesh.position.z = band.toLayer * height
      ghost.add(mesh)
    }
  }
  return ghost
}

type PlanBand = Plan['bands'][number]['bands'][number]

function bandMesh(
  plan: Plan,
  section: string,
  band: PlanBand,
  detail: Detail,
  material: MeshLambertMaterial,
): BandMesh {
  const height = plan.job.print.layerHeight
  const geometry = detail === 'beads' ? beadGeometry(band) : bodyGeometry(band, height)
  const layers = band.toLayer - band.fromLayer + 1
  const mesh = new InstancedMesh(geometry, material, layers)
  const place = new Matrix4()
  for (let i = 0; i < layers; i++)
    mesh.setMatrixAt(i, place.makeTranslation(0, 0, (band.fromLayer + i) * height))
  return { section, fromLayer: band.fromLayer, toLayer: band.toLayer, mesh }
}

function beadGeometry(band: PlanBand): BufferGeometry {
  const { positions, normals, indices } = sweptBeads(band.beads)
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  geometry.setAttribute('normal', new BufferAttribute(normals, 3))
  geometry.setIndex(new BufferAttribute(indices, 1))
  return geometry
}

function bodyGeometry(band: PlanBand, height: number): BufferGeometry {
  const shapes = band.body.map(({ outer, holes }) => {
    const shape = new Shape(outer.map(([x, y]) => new Vector2(x, y)))
    shape.holes = holes.map(hole => new HolePath(hole.map(([x, y]) => new Vector2(x, y))))
    return shape
  })
  const geometry = new ExtrudeGeometry(shapes, {
    depth: height * 0.94,
    bevelEnabled: false,
    curveSegments: 1,
  })
  geometry.translate(0, 0, -height)
  return geometry
}

const colour = new Color()

function showBand(
  band: BandMesh,
  clock: LayerClock,
  moment: Instant,
  share: ReturnType<typeof layerShare>,
): void {
  const standing = standingLayers(clock[band.section] ?? [], moment)
  const count = Math.max(0, Math.min(standing, band.toLayer) - band.fromLayer + 1)
  band.mesh.count = count
  band.mesh.visible = count > 0
  for (let i = 0; i < count; i++)
    band.mesh.setColorAt(i, colour.setRGB(...rampColour(share(band.section, band.fromLayer + i, moment))))
  if (band.mesh.instanceColor) band.mesh.instanceColor.needsUpdate = true
}

function lights() {
  const sun = new DirectionalLight(0xffffff, 2.2)
  sun.position.set(-6, -9, 14)
  return [new HemisphereLight(0xffffff, 0x8a8f94, 1.5), sun]
}

function slab(centre: Vector3, width: number, depth: number, ground: string): Mesh {
  const mesh = new Mesh(new PlaneGeometry(width + 2, depth + 2), new MeshLambertMaterial({ color: ground }))
  mesh.position.set(centre.x, centre.y, -0.005)
  return mesh
}

function boundsOf(plan: Plan) {
  const points = plan.job.walls.flatMap(wall => wall.centreline.points)
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  const [left, right, least, most] = [
    Math.min(...xs),
    Math.max(...xs),
    Math.min(...ys) - 0.5,
    Math.max(...ys) + 0.5,
  ]
  const top = Math.max(...plan.job.walls.map(wall => wall.top))
  return {
    centre: new Vector3((left + right) / 2, (least + most) / 2, top / 3),
    size: Math.max(right - left, most - least),
    width: right - left,
    depth: most - least,
    least,
    most,
  }
}
