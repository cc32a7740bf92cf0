import type { Plan } from '@dawnlift/core/plan'
import { type Remote, transfer, wrap } from 'comlink'
import { followBands } from '../../../state/index.js'
import { words } from '../../../words/index.js'
import type { Ground, Standing } from './look.js'
import { eyeOf, firstOrbit, keyed, nearer, type Orbit, shifted, turned } from './orbit.js'
import type { Solid } from './solid.worker.js'

/** A canvas that a worker draws on, and the hand that turns the house on it. */
export interface Stage {
  /** False where this browser draws no solids. */
  readonly opened: Promise<boolean>
  readonly show: (standing: Standing) => void
  /** Slab and cut follow the walls of a newer plan, and the colours of the page. */
  readonly follow: (plan: Plan) => void
  /** Cut open from the near side; 1 cuts nothing. */
  readonly cut: (share: number) => void
  readonly close: () => void
}

export function openStage(host: HTMLElement, plan: Plan): Stage {
  const canvas = canvasIn(host)
  const worker = new Worker(new URL('./solid.worker.ts', import.meta.url), { type: 'module' })
  const remote: Remote<Solid> = wrap<Solid>(worker)
  let ground = groundOf(plan)
  let orbit: Orbit | undefined
  let home: Orbit | undefined
  let cutShare = 1
  const look = () => {
    const { clientWidth: width, clientHeight: height } = host
    if (width === 0 || height === 0) return
    home ??= firstOrbit(middleOf(plan), sizeOf(ground), width / height)
    orbit ??= home
    void remote.look({
      width,
      height,
      ratio: Math.min(2, devicePixelRatio),
      eye: eyeOf(orbit),
      middle: orbit.middle,
      ...(cutShare >= 1 ? {} : { cutAt: cutLine(ground, cutShare) }),
    })
  }
  const opened = openCanvas(remote, canvas, plan.job.print.layerHeight)
  void opened.then(isOpen => {
    if (!isOpen) return
    const { port1, port2 } = new MessageChannel()
    void remote.follow(transfer(port1, [port1]))
    followBands(port2)
    void remote.ground(ground)
    look()
  })
  const letGo = handOn(canvas, (change: (orbit: Orbit, home: Orbit) => Orbit) => {
    if (!orbit || !home) return
    orbit = change(orbit, home)
    look()
  })
  const watch = new ResizeObserver(look)
  watch.observe(host)
  return {
    opened,
    show: standing => void remote.show(standing),
    follow: newer => {
      ground = groundOf(newer)
      void remote.ground(ground)
      look()
    },
    cut: share => {
      cutShare = share
      look()
    },
    close: () => {
      letGo()
      watch.disconnect()
      worker.terminate()
      canvas.remove()
    },
  }
}

async function openCanvas(
  remote: Remote<Solid>,
  canvas: HTMLCanvasElement,
  layerHeight: number,
): Promise<boolean> {
  if (!('transferControlToOffscreen' in canvas)) return false
  const offscreen = canvas.transferControlToOffscreen()
  return remote.open(transfer(offscreen, [offscreen]), layerHeight)
}

/** Made here and not by React: what a worker draws on can be handed over only once. */
function canvasIn(host: HTMLElement): HTMLCanvasElement {
  const canvas = document.createElement('canvas')
  canvas.tabIndex = 0
  canvas.setAttribute('role', 'application')
  canvas.setAttribute('aria-label', words.walls.solid.label)
  canvas.setAttribute('aria-describedby', 'solid-keys')
  host.append(canvas)
  return canvas
}

/** Pointer, wheel and keys: turn, shift with Shift or two fingers, come nearer. */
function handOn(
  canvas: HTMLCanvasElement,
  change: (how: (orbit: Orbit, home: Orbit) => Orbit) => void,
): () => void {
  const fingers = new Map<number, readonly [number, number]>()
  const down = (event: PointerEvent) => {
    canvas.setPointerCapture(event.pointerId)
    fingers.set(event.pointerId, [event.clientX, event.clientY])
  }
  const move = (event: PointerEvent) => {
    const before = fingers.get(event.pointerId)
    if (!before) return
    const after = [event.clientX, event.clientY] as const
    const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1]
    fingers.set(event.pointerId, after)
    const [right, low] = [after[0] - before[0], after[1] - before[1]]
    change(orbit => {
      const metres = (orbit.away * 0.7) / canvas.clientHeight
      if (other) {
        const apart = (at: readonly [number, number]) =>
          Math.max(1, Math.hypot(at[0] - other[0], at[1] - other[1]))
        return nearer(shifted(orbit, (-right / 2) * metres, (low / 2) * metres), apart(after) / apart(before))
      }
      return event.shiftKey || event.buttons === 2
        ? shifted(orbit, -right * metres, low * metres)
        : turned(orbit, right * 0.008, -low * 0.008)
    })
  }
  const up = (event: PointerEvent) => fingers.delete(event.pointerId)
  const wheel = (event: WheelEvent) => {
    event.preventDefault()
    change(orbit => nearer(orbit, Math.exp(-event.deltaY * 0.0015)))
  }
  const key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    change((orbit, home) => {
      const next = keyed(orbit, event.key, event.shiftKey, home)
      if (next) event.preventDefault()
      return next ?? orbit
    })
  }
  const ending = new AbortController()
  const { signal } = ending
  canvas.addEventListener('pointerdown', down, { signal })
  canvas.addEventListener('pointermove', move, { signal })
  canvas.addEventListener('pointerup', up, { signal })
  canvas.addEventListener('pointercancel', up, { signal })
  canvas.addEventListener('wheel', wheel, { passive: false, signal })
  canvas.addEventListener('keydown', key, { signal })
  canvas.addEventListener('contextmenu', event => event.preventDefault(), { signal })
  return () => ending.abort()
}

function groundOf({ job }: Plan): Ground {
  const points = job.walls.flatMap(wall => wall.centreline.points)
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  return {
    least: [Math.min(...xs), Math.min(...ys) - 0.5],
    most: [Math.max(...xs), Math.max(...ys) + 0.5],
    colour: getComputedStyle(document.documentElement).getPropertyValue('--line').trim() || '#cfc8b8',
  }
}

/** The house is first seen from this side, and cut from it: so much of its depth is left standing. */
const cutLine = ({ least, most }: Ground, share: number): number => most[1] - (most[1] - least[1]) * share

const sizeOf = ({ least, most }: Ground): number => Math.max(most[0] - least[0], most[1] - least[1])

function middleOf(plan: Plan): Orbit['middle'] {
  const { least, most } = groundOf(plan)
  const top = Math.max(...plan.job.walls.map(wall => wall.top))
  return [(least[0] + most[0]) / 2, (least[1] + most[1]) / 2, top / 3]
}
