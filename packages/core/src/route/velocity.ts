import { cornerSpeed, type Machine, peakSpeed, type SpeedRamp, trapezoidTime } from '../machine/index.js'
import type { Metres, MetresPerSecond, Radians, Seconds } from '../quantity/index.js'
import { wrapped } from './segment.js'

/** One piece of a path as the machine runs it without stopping inside. */
export interface Move {
  readonly length: Metres
  /** Fastest allowed along it. */
  readonly speed: MetresPerSecond
  /** Rotation of the tangential axis while it is run [rad]. */
  readonly turn: Radians
  /** Direction of travel at its start and end [rad]. */
  readonly heading: Radians
  readonly endHeading: Radians
  /** The nozzle comes to rest where this piece begins. */
  readonly afterStop: boolean
}

/** Speeds at the ends of each move and the time it takes. `ends` is one longer than the moves. */
export interface SpeedProfile {
  readonly ends: readonly MetresPerSecond[]
  readonly peaks: readonly MetresPerSecond[]
  readonly times: readonly Seconds[]
}

/** How far the heading may lag behind or lead while its rate changes: 5°, ours, common practice, no source. */
export const headingLag: Radians = (5 * Math.PI) / 180

/** A change of direction above this stops a nozzle with a tangential axis: 10°, twice the lag. */
export const sharpTurn: Radians = 2 * headingLag

/**
 * Speeds of a chain of moves from rest to rest: corner limits first, then a backward and a forward pass so that
 * every change of speed fits the acceleration.
 *
 * @param moves    in order; the first starts and the last ends at rest
 * @param machine  acceleration [m/s²], corner deviation [m], heading rate and acceleration [rad/s, rad/s²]
 *
 * Source   closed form per piece (`trapezoidTime`); the two passes give the fastest profile within the limits.
 * Range    lengths > 0, speeds > 0.
 * Assumes  lengthwise and sideways acceleration each limited for itself; no limit on jerk.
 */
export function speedProfile(moves: readonly Move[], machine: Machine): SpeedProfile {
  const accelerations = moves.map(move => lengthwiseAcceleration(move, machine))
  const ends = endSpeeds(moves, accelerations, machine)
  const ramps = moves.map((move, i) => rampOf(move, accelerations[i]!, ends[i]!, ends[i + 1]!))
  return { ends, peaks: ramps.map(peakSpeed), times: ramps.map(trapezoidTime) }
}

/**
 * The last of the `peaks` of `speedProfile`, from the moves told backwards, the last one first. Only those are asked for that
 * bear on it: what is farther back than the way up to full speed, or before a stop, does not.
 */
export function lastPeak(backwards: Iterable<Move>, machine: Machine): MetresPerSecond {
  const run: Move[] = []
  let [wanted, reached] = [Number.POSITIVE_INFINITY, 0]
  for (const move of backwards) {
    run.unshift(move)
    if (run.length === 2) wanted = 1.001 * move.speed ** 2
    if (run.length > 1) reached += 2 * lengthwiseAcceleration(move, machine) * move.length
    // a thousandth more than it takes, for the rounding of either way to sum up
    if (move.afterStop || reached > wanted) break
  }
  const accelerations = run.map(move => lengthwiseAcceleration(move, machine))
  const last = run.length - 1
  const from = endSpeeds(run, accelerations, machine)[last]!
  return peakSpeed(rampOf(run[last]!, accelerations[last]!, from, 0))
}

/** Speeds where the moves meet, at rest before the first and after the last. */
function endSpeeds(moves: readonly Move[], accelerations: readonly number[], machine: Machine): number[] {
  const ends = moves.map((move, i) => (i === 0 ? 0 : junctionSpeed(moves[i - 1]!, move, machine)))
  ends.push(0)
  for (let i = moves.length - 1; i >= 0; i--)
    ends[i] = Math.min(ends[i]!, reachable(ends[i + 1]!, accelerations[i]!, moves[i]!.length))
  for (let i = 0; i < moves.length; i++)
    ends[i + 1] = Math.min(ends[i + 1]!, reachable(ends[i]!, accelerations[i]!, moves[i]!.length))
  return ends
}

const rampOf = (move: Move, acceleration: number, from: number, to: number): SpeedRamp => ({
  distance: move.length,
  speed: move.speed,
  acceleration,
  from,
  to,
})

/**
 * Acceleration along a piece. Where the heading turns with the path, the axis has to speed up with the nozzle.
 *
 *   a = min( a_machine, α·L/|Δψ| )
 *
 * Source   closed form: ω = v·Δψ/L.
 * Range    any.
 * Assumes  heading turns evenly along the piece.
 */
export function lengthwiseAcceleration(move: Move, machine: Machine): number {
  if (machine.headingRate === 0 || move.turn === 0) return machine.acceleration
  return Math.min(machine.acceleration, (machine.headingAcceleration * move.length) / Math.abs(move.turn))
}

/**
 * Speed from one piece into the next.
 *
 *   least of both pieces' speeds, the corner's speed, and √(8·α·δ)/|Δκ|
 *
 * where κ = Δψ/L is the rotation per metre: while the axis changes its rate by v·Δκ at α, centred on the joint, it is
 * off by (v·Δκ)²/(8·α) at most, which has to stay within `headingLag` δ.
 *
 * Source   closed form: corner by inscribed arc, axis by constant angular acceleration.
 * Range    any.
 * Assumes  the controller blends the heading around the joint.
 */
export function junctionSpeed(before: Move, after: Move, machine: Machine): MetresPerSecond {
  if (after.afterStop) return 0
  const corner = Math.abs(wrapped(after.heading - before.endHeading))
  // a millionth of a degree is rounding, not a corner
  const angle = corner < 2e-8 ? 0 : corner
  const speed = Math.min(
    before.speed,
    after.speed,
    cornerSpeed(Math.PI - angle, machine.cornerDeviation, machine.acceleration),
  )
  if (machine.headingRate === 0) return speed
  const change = Math.abs(after.turn / after.length - before.turn / before.length)
  return change === 0
    ? speed
    : Math.min(speed, Math.sqrt(8 * machine.headingAcceleration * headingLag) / change)
}

const reachable = (speed: MetresPerSecond, acceleration: number, length: Metres): MetresPerSecond =>
  Math.sqrt(speed ** 2 + 2 * acceleration * length)
