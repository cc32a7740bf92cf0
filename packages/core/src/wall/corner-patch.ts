import {
  distance,
  leftOf,
  meetingPoint,
  minus,
  type Point,
  plus,
  type Ring,
  times,
} from '../geometry/index.js'
import type { Metres, Radians } from '../quantity/index.js'

/** A wall leaving a point: its direction out and half its thickness. */
export interface Ray {
  readonly out: Point
  readonly half: Metres
}

/** A mitre that would reach further than this many half thicknesses from the junction is squared off there. */
const mitreReach = 3

/**
 * What fills the outside of a corner: between two neighbouring walls that open by more than a straight angle, the kite
 * from the junction to the meeting of their faces. Neighbours that open by less already lap.
 */
export function cornerPatches(
  point: Point,
  rays: readonly Ray[],
): readonly { ring: Ring; between: readonly [number, number] }[] {
  const order = rays
    .map((ray, index) => ({ ray, index, angle: Math.atan2(ray.out[1], ray.out[0]) }))
    .sort((a, b) => a.angle - b.angle)
  if (order.length < 2) return []
  return order.flatMap((right, k) => {
    const left = order[(k + 1) % order.length]!
    if (openAngle(right.angle, left.angle) < Math.PI + 1e-6) return []
    return [{ ring: kite(point, right.ray, left.ray), between: [right.index, left.index] as const }]
  })
}

/**
 * Where two walls that end at a corner lie over each other, drawn out to the outer faces: the block between their four
 * face lines. Nothing when the corner is too sharp for its mitre.
 */
export function cornerBlock(point: Point, a: Ray, b: Ray): Ring | undefined {
  const meet = (sideA: number, sideB: number) =>
    meetingPoint(
      plus(point, times(leftOf(a.out), sideA * a.half)),
      a.out,
      plus(point, times(leftOf(b.out), sideB * b.half)),
      b.out,
    )
  const ring = [meet(1, 1), meet(-1, 1), meet(-1, -1), meet(1, -1)]
  const most = mitreReach * Math.max(a.half, b.half)
  return ring.every(corner => corner && distance(corner, point) <= most) ? (ring as Point[]) : undefined
}

function openAngle(from: Radians, to: Radians): Radians {
  const turn = to - from
  return turn <= 0 ? turn + 2 * Math.PI : turn
}

function kite(point: Point, right: Ray, left: Ray): Ring {
  const a = plus(point, times(leftOf(right.out), right.half))
  const b = minus(point, times(leftOf(left.out), left.half))
  const tip = meetingPoint(a, right.out, b, left.out)
  const most = mitreReach * Math.max(right.half, left.half)
  if (tip && distance(tip, point) <= most) return [point, a, tip, b]
  const squared = (ray: Ray, face: Point) =>
    minus(face, times(ray.out, Math.sqrt(Math.max(0, most ** 2 - ray.half ** 2))))
  return tip ? [point, a, squared(right, a), squared(left, b), b] : [point, a, b]
}
