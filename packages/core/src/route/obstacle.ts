import type { Point } from '../geometry/index.js'
import { type Machine, machinePoint } from '../machine/index.js'
import type { Metres } from '../quantity/index.js'
import type { RouteRules } from './options.js'

/** A prism the nozzle has to stay clear of, in the machine frame. */
export interface Obstacle {
  readonly name: string
  readonly outline: readonly Point[]
  readonly bottom: Metres
  readonly top: Metres
  /** The machine's own, not something set on site. */
  readonly keepOut: boolean
}

/** What stands proud and what the machine keeps out of, alike. */
export function obstaclesOf(machine: Machine, rules: Pick<RouteRules, 'proud' | 'origin'>): Obstacle[] {
  const proud = rules.proud.map(({ name, outline, top }) => ({
    name,
    outline: outline.map(point => machinePoint(rules.origin, point)),
    bottom: Number.NEGATIVE_INFINITY,
    top: rules.origin.z + top,
    keepOut: false,
  }))
  const keepOut = machine.keepOut.map(({ name, x, y, z }) => ({
    name,
    outline: [
      [x[0], y[0]],
      [x[1], y[0]],
      [x[1], y[1]],
      [x[0], y[1]],
    ] as const,
    bottom: z[0],
    top: z[1],
    keepOut: true,
  }))
  return [...proud, ...keepOut]
}

/** Does a straight way pass within `room` of an outline, or inside it? */
export function comesNear(from: Point, to: Point, outline: readonly Point[], room: Metres): boolean {
  if (inside(from, outline) || inside(to, outline)) return true
  return edgesDistance(from, to, outline, room) <= room
}

/** How near a straight way comes to the edges of an outline; infinite beyond `room`. */
export function edgesDistance(from: Point, to: Point, outline: readonly Point[], room: Metres): Metres {
  const west = Math.min(from[0], to[0]) - room
  const east = Math.max(from[0], to[0]) + room
  const south = Math.min(from[1], to[1]) - room
  const north = Math.max(from[1], to[1]) + room
  let least = Number.POSITIVE_INFINITY
  let a = outline.at(-1)!
  for (let i = 0; i < outline.length; i++) {
    const b = outline[i]!
    // most edges are far away
    const beside = (a[0] < west && b[0] < west) || (a[0] > east && b[0] > east)
    const far = beside || (a[1] < south && b[1] < south) || (a[1] > north && b[1] > north)
    if (!far) least = Math.min(least, segmentsDistance(from, to, a, b))
    a = b
  }
  return least <= room ? least : Number.POSITIVE_INFINITY
}

/** Even-odd rule. */
export function inside([x, y]: Point, outline: readonly Point[]): boolean {
  let odd = false
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) odd = !odd
  })
  return odd
}

function segmentsDistance(a: Point, b: Point, c: Point, d: Point): Metres {
  if (cross(a, b, c) * cross(a, b, d) < 0 && cross(c, d, a) * cross(c, d, b) < 0) return 0
  return Math.min(
    pointDistance(a, c, d),
    pointDistance(b, c, d),
    pointDistance(c, a, b),
    pointDistance(d, a, b),
  )
}

const cross = (o: Point, a: Point, b: Point): number =>
  (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])

function pointDistance([x, y]: Point, a: Point, b: Point): Metres {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const square = dx * dx + dy * dy
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / square))
  return Math.hypot(x - a[0] - share * dx, y - a[1] - share * dy)
}
