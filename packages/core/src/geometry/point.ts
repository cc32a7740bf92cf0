import type { Metres, Radians } from '../quantity/index.js'
import type { Point } from './path.js'

export const plus = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1]]
export const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]]
export const times = (a: Point, factor: number): Point => [a[0] * factor, a[1] * factor]
export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1]
/** Positive when b points to the left of a. */
export const cross = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0]
/** A plan neither over- nor underflows a square, and `Math.hypot`, which guards against both, takes ten times as long. */
export const size = ([x, y]: Point): Metres => Math.sqrt(x * x + y * y)
export function distance(a: Point, b: Point): Metres {
  const [x, y] = [a[0] - b[0], a[1] - b[1]]
  return Math.sqrt(x * x + y * y)
}
export const between = (a: Point, b: Point, share: number): Point => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
]
/** A quarter turn to the left. */
export const leftOf = (a: Point): Point => [-a[1], a[0]]
export const direction = (angle: Radians): Point => [Math.cos(angle), Math.sin(angle)]
/** Unit vector from a to b; the zero vector when they coincide. */
export function towards(a: Point, b: Point): Point {
  const length = distance(a, b)
  return length > 0 ? [(b[0] - a[0]) / length, (b[1] - a[1]) / length] : [0, 0]
}
/** From direction a to direction b, turning left, −π … π. */
export const turnBetween = (a: Point, b: Point): Radians => Math.atan2(cross(a, b), dot(a, b))

/** Where two lines, each through a point along a direction, meet; nothing when they run parallel. */
export function meetingPoint(p: Point, along: Point, q: Point, across: Point): Point | undefined {
  const slant = cross(along, across)
  if (Math.abs(slant) < 1e-12 * size(along) * size(across)) return undefined
  return plus(p, times(along, cross(minus(q, p), across) / slant))
}
