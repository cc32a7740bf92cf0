import { expose } from 'comlink'
import { PerspectiveCamera, WebGLRenderer } from 'three'
import type { BandPost } from '../../../state/band-post.js'
import type { Detail } from './band-mesh.js'
import type { Ground, Look, Standing } from './look.js'
import { type HouseScene, houseScene } from './scene.js'

let renderer: WebGLRenderer | undefined
let house: HouseScene | undefined
let look: Look | undefined
let asked = false
const camera = new PerspectiveCamera(38, 1, 0.1, 300)
camera.up.set(0, 0, 1)

/** Draws when something has changed, never in between, and once for all that has changed since the last frame. */
function draw(): void {
  if (asked) return
  asked = true
  requestAnimationFrame(() => {
    asked = false
    if (!renderer || !house || !look) return
    renderer.render(house.scene, camera)
  })
}

/** Draws the house on a canvas of the page, out of the page’s way: building beads and drawing them may take long. */
const solid = {
  /** False where this browser draws no solids in a worker. */
  open(canvas: OffscreenCanvas, layerHeight: number): boolean {
    const detail = detailHere()
    if (!detail) return false
    renderer = new WebGLRenderer({ canvas, antialias: detail === 'beads', alpha: true })
    renderer.localClippingEnabled = true
    house = houseScene(detail, layerHeight)
    return true
  },
  /** Where the planner posts the bands of each plan from now on. */
  follow(port: MessagePort): void {
    port.onmessage = ({ data }: MessageEvent<BandPost>) => {
      house?.take(data)
      draw()
    }
  },
  /** The slab follows the walls and the light in the room. */
  ground(next: Ground): void {
    house?.ground(next)
    draw()
  },
  look(next: Look): void {
    if (!renderer || !house) return
    if (look?.width !== next.width || look.height !== next.height || look.ratio !== next.ratio) {
      renderer.setPixelRatio(next.ratio)
      renderer.setSize(next.width, next.height, false)
      camera.aspect = next.width / next.height
      camera.updateProjectionMatrix()
    }
    look = next
    camera.position.set(...next.eye)
    camera.lookAt(...next.middle)
    house.cut(next.cutAt)
    draw()
  },
  show(standing: Standing): void {
    house?.show(standing)
    draw()
  },
}

export type Solid = typeof solid
expose(solid)

/** A processor that draws in software manages slabs smoothly, not three million facets. Nothing where nothing is drawn at all. */
function detailHere(): Detail | undefined {
  const context = new OffscreenCanvas(1, 1).getContext('webgl2')
  if (!context) return undefined
  const facts = context.getExtension('WEBGL_debug_renderer_info')
  const name = facts ? String(context.getParameter(facts.UNMASKED_RENDERER_WEBGL)) : ''
  context.getExtension('WEBGL_lose_context')?.loseContext()
  return /swiftshader|llvmpipe|software/i.test(name) ? 'bodies' : 'beads'
}
