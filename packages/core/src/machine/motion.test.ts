import { describe, expect, it } from 'vitest'
import { arcSpeed, cornerRadius, cornerSpeed, jerkTime, peakSpeed, trapezoidTime, turnTime } from './index.js'

const degrees = Math.PI / 180
// Rows are printed to six figures: half a unit of the last figure.
const asPrinted = 5e-6

describe('trapezoidTime', () => {
  it.each([
    // L mm, v mm/s, a mm/s², expected s, origin
    [1000, 200, 500, 5.4, 'closed form L/v + v/a'],
    [80, 200, 500, 0.8, 'closed form: exactly long enough'],
    [50, 200, 500, 0.632456, 'closed form 2√(L/a)'],
    [3000, 150, 300, 20.5, 'closed form L/v + v/a'],
  ] as const)('%d mm at %d mm/s and %d mm/s² takes %d s (%s)', (L, v, a, expected) =>
    expect(Math.abs(trapezoidTime({ distance: L, speed: v, acceleration: a }) - expected)).toBeLessThan(
      asPrinted,
    ),
  )

  it('reaches the peak that covers the distance between two end speeds', () => {
    // hand: a = 2, u = 1, w = 3, v = 4: up (16−1)/4 = 3.75 m, down (16−9)/4 = 1.75 m, together 5.5 m in 1.5 + 0.5 s
    expect(peakSpeed({ distance: 5.5, speed: 9, acceleration: 2, from: 1, to: 3 })).toBeCloseTo(4, 12)
    expect(trapezoidTime({ distance: 5.5, speed: 9, acceleration: 2, from: 1, to: 3 })).toBeCloseTo(2, 12)
  })
  it('adds up when a move is cut where it runs at full speed', () => {
    const whole = trapezoidTime({ distance: 3, speed: 0.5, acceleration: 0.4 })
    const first = trapezoidTime({ distance: 1, speed: 0.5, acceleration: 0.4, to: 0.5 })
    const second = trapezoidTime({ distance: 2, speed: 0.5, acceleration: 0.4, from: 0.5 })
    expect(first + second).toBeCloseTo(whole, 12)
  })
  it('approaches length over speed as acceleration grows', () =>
    expect(trapezoidTime({ distance: 2, speed: 0.2, acceleration: 1e9 })).toBeCloseTo(10, 6))
})

describe('jerkTime', () => {
  it.each([
    [1000, 5.65, 'closed form: all seven phases'],
    [100, 1.178709, 'closed form: full acceleration, speed not reached'],
    [10, 0.542884, 'closed form: acceleration not reached'],
  ] as const)('%d mm takes %d s (%s)', (L, expected) =>
    expect(
      Math.abs(jerkTime({ distance: L, speed: 200, acceleration: 500, jerk: 2000 }) - expected),
    ).toBeLessThan(asPrinted),
  )

  it('covers its distance when its jerk is integrated step by step', () => {
    // independent: four equal jerk phases j, −j, −j, j of T/4 each, integrated by the midpoint rule
    const T = jerkTime({ distance: 10, speed: 200, acceleration: 500, jerk: 2000 })
    const steps = 40000
    let acceleration = 0
    let speed = 0
    let distance = 0
    for (let i = 0; i < steps; i++) {
      const phase = Math.floor((4 * i) / steps)
      const jerk = phase === 0 || phase === 3 ? 2000 : -2000
      const dt = T / steps
      distance += speed * dt + (acceleration * dt ** 2) / 2
      speed += acceleration * dt + (jerk * dt ** 2) / 2
      acceleration += jerk * dt
    }
    // the rectangle rule leaves an error of order dt², about 1e-9 of the distance
    expect(distance).toBeCloseTo(10, 4)
    expect(speed).toBeCloseTo(0, 6)
  })
  it.each([0.001, 0.02, 0.08, 0.3, 4])('is never faster than without the jerk limit: %d m', distance =>
    expect(jerkTime({ distance, speed: 0.2, acceleration: 0.5, jerk: 2 })).toBeGreaterThan(
      trapezoidTime({ distance, speed: 0.2, acceleration: 0.5 }),
    ),
  )
  it.each([0.0001, 0.01, 0.05, 0.09999, 0.1, 0.2])('grows without a jump around %d m', distance => {
    const at = (d: number) => jerkTime({ distance: d, speed: 0.2, acceleration: 0.5, jerk: 2 })
    expect(at(distance * (1 + 1e-9)) - at(distance)).toBeLessThan(1e-8)
    expect(at(distance * 1.001)).toBeGreaterThan(at(distance))
  })
  it('approaches the trapezoid as the jerk grows', () =>
    expect(jerkTime({ distance: 1, speed: 0.2, acceleration: 0.5, jerk: 1e9 })).toBeCloseTo(5.4, 6))
})

describe('cornerSpeed', () => {
  it.each([
    // closed form, computed independently: a 500 mm/s², deviation 0.5 mm
    [60, 15.811, 0.0005],
    [90, 24.567, 0.0005],
    [120, 40.2, 0.0005],
    [150, 84.184, 0.0005],
    [175, 512.27, 0.005],
  ] as const)('at %d° between the legs is %d mm/s', (angle, expected, halfDigit) =>
    expect(Math.abs(cornerSpeed(angle * degrees, 0.5, 500) - expected)).toBeLessThanOrEqual(halfDigit),
  )

  it('rounds a corner of 60° with a radius equal to the deviation', () =>
    expect(cornerRadius(60 * degrees, 0.5)).toBeCloseTo(0.5, 12))
  it('rounds a square corner with 1/(√2 − 1) times the deviation', () =>
    expect(cornerRadius(90 * degrees, 1)).toBeCloseTo(1 / (Math.SQRT2 - 1), 12))
  it('is unlimited straight on and nothing straight back', () => {
    expect(cornerSpeed(Math.PI, 0.002, 0.5)).toBe(Number.POSITIVE_INFINITY)
    expect(cornerSpeed(0, 0.002, 0.5)).toBe(0)
  })
})

describe('tangential axis', () => {
  it('turns 85.94° per second at 150 mm/s on a radius of 100 mm', () => {
    // closed form ω = v/R; the speed at which that rate is the limit must be 150 mm/s again
    expect(arcSpeed(0.1, 1e9, 85.943669 * degrees)).toBeCloseTo(0.15, 8)
  })
  it('does not limit a round nozzle', () => expect(arcSpeed(0.1, 0.4, 0)).toBeCloseTo(0.2, 12))
  it('turns a little without reaching its rate, in 2√(φ/α), and not at all in no time', () => {
    // hand: 20° at 180°/s²: half way after √(20/180) s = 0.3333 s, at 60°/s, under the 90°/s allowed.
    expect(turnTime(20 * degrees, 90 * degrees, 180 * degrees)).toBeCloseTo(2 / 3, 12)
    expect(turnTime(0, 90 * degrees, 180 * degrees)).toBe(0)
  })
  it('turns 90° at 90°/s and 180°/s² in 1.5 s either way', () => {
    // closed form 90/90 + 90/180
    expect(turnTime(90 * degrees, 90 * degrees, 180 * degrees)).toBeCloseTo(1.5, 12)
    expect(turnTime(-90 * degrees, 90 * degrees, 180 * degrees)).toBeCloseTo(1.5, 12)
  })
})
