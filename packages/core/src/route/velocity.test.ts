import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { arcSpeed, cornerSpeed, machineProfile } from '../machine/index.js'
import { junctionSpeed, lastPeak, lengthwiseAcceleration, type Move, speedProfile } from './velocity.js'

const tangential = machineProfile('gantry-12')!
const round = machineProfile('gantry-12-round')!
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

const straight = (length: number, speed = 0.15, heading = 0): Move => ({
  length,
  speed,
  turn: 0,
  heading,
  endHeading: heading,
  afterStop: false,
})

/**
 * Independent: drive the nozzle in small time steps. Each step speeds up as much as it may, unless some joint ahead
 * could then no longer be met by braking. First order in the step.
 */
function driven(
  moves: readonly Move[],
  jointSpeeds: readonly number[],
  acceleration: number,
  step: number,
): number {
  const joints = moves.map((_, i) => sum(moves.slice(0, i + 1).map(move => move.length)))
  const total = joints.at(-1)!
  let [at, speed, time, piece] = [0, 0, 0, 0]
  while (at < total - 1e-9) {
    while (piece < moves.length - 1 && at >= joints[piece]!) piece++
    let allowed = Math.min(speed + acceleration * step, moves[piece]!.speed)
    for (let k = piece; k < moves.length; k++) {
      const entry = k + 1 < moves.length ? Math.min(jointSpeeds[k]!, moves[k + 1]!.speed) : 0
      allowed = Math.min(allowed, Math.sqrt(entry ** 2 + 2 * acceleration * Math.max(0, joints[k]! - at)))
    }
    // the last crawl to the very end: a step in which it would not move is the end
    if (allowed < acceleration * step * 0.5) allowed = acceleration * step * 0.5
    speed = allowed
    const travelled = Math.min(speed * step, total - at)
    time += travelled / speed
    at += travelled
  }
  return time
}

describe('speedProfile', () => {
  const path = [
    straight(0.8, 0.2),
    straight(0.05, 0.08, 0.1),
    straight(0.3, 0.2, 1.2),
    straight(0.01, 0.2, 1.25),
    straight(0.02, 0.2, 1.3),
    straight(1.1, 0.15, 1.3),
  ]
  const joints = path.slice(1).map((move, i) => {
    const corner = Math.abs(move.heading - path[i]!.endHeading)
    return Math.min(path[i]!.speed, cornerSpeed(Math.PI - corner, round.cornerDeviation, round.acceleration))
  })

  it('takes the time of a nozzle driven in small steps', () => {
    const planned = sum(speedProfile(path, round).times)
    const coarse = driven(path, joints, round.acceleration, 2e-3) - planned
    const fine = driven(path, joints, round.acceleration, 1e-3) - planned
    // the step error halves with the step: what is left after extrapolation is far below a thousandth
    expect(Math.abs(fine) / planned).toBeLessThan(2e-3)
    expect(Math.abs(2 * fine - coarse) / planned).toBeLessThan(5e-4)
  })
  it('is one trapezoid over pieces in line', () => {
    // closed form: 3 m at 0.15 m/s and 0.5 m/s²
    const cut = [straight(0.001), straight(1.2), straight(0.05), straight(1.749)]
    expect(sum(speedProfile(cut, round).times)).toBeCloseTo(3 / 0.15 + 0.3, 9)
  })
  it('stops where it is told to', () => {
    const stopped = [straight(1), { ...straight(2), afterStop: true }]
    expect(speedProfile(stopped, round).ends).toEqual([0, 0, 0])
    expect(sum(speedProfile(stopped, round).times)).toBeCloseTo(3 / 0.15 + 0.6, 9)
  })

  const move = fc
    .record({
      length: fc.double({ min: 1e-4, max: 3, noNaN: true }),
      speed: fc.double({ min: 0.005, max: 0.3, noNaN: true }),
      turn: fc.oneof(fc.constant(0), fc.double({ min: -3, max: 3, noNaN: true })),
      heading: fc.double({ min: -3, max: 3, noNaN: true }),
      afterStop: fc.boolean(),
    })
    .map((drawn): Move => ({ ...drawn, endHeading: drawn.heading + drawn.turn }))
  const chains = fc.array(move, { minLength: 1, maxLength: 12 })

  it('never breaks a limit: piece, joint, acceleration both ways', () =>
    fc.assert(
      fc.property(chains, moves => {
        const { ends, peaks } = speedProfile(moves, tangential)
        moves.forEach((each, i) => {
          const a = lengthwiseAcceleration(each, tangential)
          const [from, to, peak] = [ends[i]!, ends[i + 1]!, peaks[i]!]
          expect(peak).toBeLessThanOrEqual(each.speed * (1 + 1e-12))
          expect(Math.max(from, to)).toBeLessThanOrEqual(peak * (1 + 1e-12))
          expect(Math.abs(from ** 2 - to ** 2)).toBeLessThanOrEqual(2 * a * each.length * (1 + 1e-9))
          // up to the peak and down again fits into the piece
          expect(2 * peak ** 2 - from ** 2 - to ** 2).toBeLessThanOrEqual(
            2 * a * each.length * (1 + 1e-9) + 1e-15,
          )
          if (i > 0) expect(from).toBeLessThanOrEqual(junctionSpeed(moves[i - 1]!, each, tangential))
        })
        expect(ends[0]).toBe(0)
        expect(ends.at(-1)).toBe(0)
      }),
    ))
  it('is as fast as the limits allow: raising any joint breaks one', () =>
    fc.assert(
      fc.property(chains, moves => {
        const { ends } = speedProfile(moves, tangential)
        for (let i = 1; i < moves.length; i++) {
          const more = ends[i]! * 1.001 + 1e-6
          const [before, after] = [moves[i - 1]!, moves[i]!]
          const fits = (u: number, w: number, each: Move) =>
            Math.abs(u ** 2 - w ** 2) <= 2 * lengthwiseAcceleration(each, tangential) * each.length
          const allowed =
            more <= junctionSpeed(before, after, tangential) &&
            fits(ends[i - 1]!, more, before) &&
            fits(more, ends[i + 1]!, after)
          expect(allowed).toBe(false)
        }
      }),
    ))
  it('has the last peak told backwards from the end, bit for bit, and asks for no move too far back to matter', () => {
    fc.assert(
      fc.property(chains, moves => {
        const backwards = [...moves].reverse()
        expect(lastPeak(backwards, tangential)).toBe(speedProfile(moves, tangential).peaks.at(-1))
      }),
      { numRuns: 1000 },
    )
    let asked = 0
    function* long() {
      for (; asked < 1000; asked++) yield straight(1)
    }
    lastPeak(long(), tangential)
    expect(asked).toBeLessThan(5)
  })
  it('takes longer when the machine is slower to speed up', () => {
    const time = (acceleration: number) => sum(speedProfile(path, { ...round, acceleration }).times)
    expect(time(0.2)).toBeGreaterThan(time(0.5))
    expect(time(0.5)).toBeGreaterThan(time(2))
  })
})

describe('the tangential axis on the way', () => {
  it('speeds up no faster than its acceleration allows', () => {
    // closed form: half circle of radius 0.02 m, α = π rad/s²: a = α·R = 0.0628 m/s²
    const half: Move = { ...straight(Math.PI * 0.02), turn: Math.PI, endHeading: Math.PI }
    expect(lengthwiseAcceleration(half, tangential)).toBeCloseTo(Math.PI * 0.02, 12)
    expect(lengthwiseAcceleration(half, round)).toBe(0.5)
  })
  it('is never off by more than its lag when a line runs into an arc', () => {
    // independent: ramp the rate from 0 to v/R at α, centred on the joint, and step the angles
    const radius = 0.1
    const speed = arcSpeed(radius, tangential.acceleration, tangential.headingRate)
    const arc: Move = { ...straight(0.1, speed), turn: 1, endHeading: 1 }
    const v = junctionSpeed(straight(1, 0.3), arc, tangential)
    const duration = v / radius / tangential.headingAcceleration
    let worst = 0
    for (let i = 0; i <= 1000; i++) {
      const t = (i / 1000) * duration
      const axis = (tangential.headingAcceleration * t ** 2) / 2
      const path = Math.max(0, ((t - duration / 2) * v) / radius)
      worst = Math.max(worst, Math.abs(axis - path))
    }
    expect(worst).toBeLessThanOrEqual((5 * Math.PI) / 180 + 1e-9)
  })
})
