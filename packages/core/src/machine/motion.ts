import type { Metres, MetresPerSecond, Radians, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'

/** One move along a path: how far, the speed it may reach, the acceleration, and the speeds at its ends. */
export interface SpeedRamp {
  readonly distance: Metres
  readonly speed: MetresPerSecond
  readonly acceleration: number
  readonly from?: MetresPerSecond
  readonly to?: MetresPerSecond
}

/**
 * Highest speed reached on a move that enters at u and leaves at w.
 *
 *   v = min( speed, √( a·L + (u² + w²)/2 ) )
 *
 * @param ramp  distance L [m], speed [m/s], acceleration a [m/s²], end speeds u, w [m/s]
 *
 * Source   closed form: constant acceleration up, constant acceleration down.
 * Range    L ≥ 0, a > 0, |u² − w²| ≤ 2·a·L.
 * Assumes  the same acceleration up and down, no limit on jerk.
 */
export function peakSpeed({ distance, speed, acceleration, from = 0, to = 0 }: SpeedRamp): MetresPerSecond {
  const reachable = Math.sqrt(acceleration * distance + (from ** 2 + to ** 2) / 2)
  return Math.max(Math.min(speed, reachable), from, to)
}

/**
 * Time of one move with a trapezoid of speed (a triangle when it is too short to reach its speed).
 *
 *   rest to rest:  L ≥ v²/a: T = L/v + v/a      else T = 2·√(L/a)
 *
 * @param ramp  distance L [m], speed v [m/s], acceleration a [m/s²], end speeds [m/s]
 *
 * Source   closed form: constant acceleration.
 * Range    L ≥ 0, v > 0, a > 0.
 * Assumes  as `peakSpeed`.
 */
export function trapezoidTime(ramp: SpeedRamp): Seconds {
  const { distance, speed, acceleration, from = 0, to = 0 } = ramp
  assert(distance >= 0 && speed > 0 && acceleration > 0, 'a move has a length, a speed and an acceleration')
  if (distance === 0) return 0
  const peak = peakSpeed(ramp)
  const ramps = (2 * peak ** 2 - from ** 2 - to ** 2) / (2 * acceleration)
  return (2 * peak - from - to) / acceleration + Math.max(0, distance - ramps) / peak
}

/**
 * Time of one move from rest to rest when the jerk is limited as well (seven phases).
 *
 *   ta = v·j ≥ a² ? v/a + a/j : 2·√(v/j)
 *   L ≥ v·ta:       T = L/v + ta
 *   L ≥ 2·a³/j²:    vp = ( −a²/j + √((a²/j)² + 4·a·L) ) / 2,   T = 2·(vp/a + a/j)
 *   otherwise:      T = 4·∛( L/(2·j) )
 *
 * @param move  distance L [m], speed v [m/s], acceleration a [m/s²], jerk j [m/s³]
 *
 * Source   closed form: constant jerk in each phase.
 * Range    L ≥ 0, v, a, j > 0.
 * Assumes  rest at both ends. Whole paths are timed with `trapezoidTime`; the difference per stop is a/j at most.
 */
export function jerkTime(move: {
  readonly distance: Metres
  readonly speed: MetresPerSecond
  readonly acceleration: number
  readonly jerk: number
}): Seconds {
  const { distance: L, speed: v, acceleration: a, jerk: j } = move
  assert(L >= 0 && v > 0 && a > 0 && j > 0, 'a move has a length, a speed, an acceleration and a jerk')
  const reachesAcceleration = v * j >= a ** 2
  const ta = reachesAcceleration ? v / a + a / j : 2 * Math.sqrt(v / j)
  if (L >= v * ta) return L / v + ta
  if (!reachesAcceleration || L < (2 * a ** 3) / j ** 2) return 4 * Math.cbrt(L / (2 * j))
  const vp = (-(a ** 2) / j + Math.sqrt((a ** 2 / j) ** 2 + 4 * a * L)) / 2
  return 2 * (vp / a + a / j)
}

/**
 * Radius of the arc that rounds a corner and leaves its tip by the deviation d.
 *
 *   r = d·sin(θ/2) / (1 − sin(θ/2))
 *
 * @param between    angle between the two legs θ [rad]: π is straight on, 0 is straight back
 * @param deviation  d [m]
 *
 * Source   closed form: arc inscribed in the corner.
 * Range    0 ≤ θ ≤ π; infinite at π.
 * Assumes  legs long enough for the arc's tangents.
 */
export function cornerRadius(between: Radians, deviation: Metres): Metres {
  const half = Math.sin(between / 2)
  return half >= 1 ? Number.POSITIVE_INFINITY : (deviation * half) / (1 - half)
}

/**
 * Speed through a corner, as if rounded by the inscribed arc.
 *
 *   v = √( a·r ),  r = `cornerRadius`
 *
 * @param between       angle between the two legs [rad]
 * @param deviation     how far the nozzle may leave the tip [m]
 * @param acceleration  a [m/s²]
 *
 * Source   closed form: centripetal acceleration on the inscribed arc.
 * Range    0 ≤ θ ≤ π.
 * Assumes  as `cornerRadius`.
 */
export const cornerSpeed = (between: Radians, deviation: Metres, acceleration: number): MetresPerSecond =>
  Math.sqrt(acceleration * cornerRadius(between, deviation))

/**
 * Speed on an arc: the nozzle's sideways acceleration and the heading axis both have to follow.
 *
 *   v = min( √(a·R), ω·R )
 *
 * @param radius        R [m]
 * @param acceleration  a [m/s²]
 * @param headingRate   ω of the tangential axis [rad/s]; 0: no such axis
 *
 * Source   closed form: circular motion.
 * Range    R > 0.
 * Assumes  sideways and lengthwise acceleration are limited each for itself.
 */
export function arcSpeed(radius: Metres, acceleration: number, headingRate: number): MetresPerSecond {
  const sideways = Math.sqrt(acceleration * radius)
  return headingRate > 0 ? Math.min(sideways, headingRate * radius) : sideways
}

/**
 * Time to turn the tangential axis on the spot, a trapezoid in angle: t = φ/ω + ω/α, or 2·√(φ/α) where ω is never reached.
 *
 * @param angle         rotation [rad], either way
 * @param rate          [rad/s]
 * @param acceleration  [rad/s²]
 *
 * Source   closed form: `trapezoidTime` with angles in place of lengths.
 * Range    rate, acceleration > 0.
 * Assumes  the axis rests before and after.
 */
export const turnTime = (angle: Radians, rate: number, acceleration: number): Seconds =>
  trapezoidTime({ distance: Math.abs(angle), speed: rate, acceleration })
