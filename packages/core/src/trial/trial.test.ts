import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { machineProfiles } from '../machine/index.js'
import type { Result } from '../result/index.js'
import { beadArea } from '../wall/index.js'
import {
  beadWidth,
  fitBeadModel,
  fitCornerModel,
  fitLags,
  fitPumpCurve,
  flowForBead,
  nextTrials,
} from './index.js'

const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problems.map(({ say }) => say).join('\n'))
  return result.value
}
const codes = (result: Result<unknown>) => (result.ok ? [] : result.problems.map(({ code }) => code))

describe('fitPumpCurve', () => {
  const bucket = (setting: number, litresPerMinute: number, i: number) => ({
    at: `bucket ${i}`,
    setting,
    caught: litresPerMinute * 2.1,
    during: 60,
  })

  it('through zero finds the setting for a flow', () => {
    // closed form: S = 12 per L/min exactly
    const curve = value(
      fitPumpCurve(
        [3, 6, 9, 12].map((q, i) => bucket(12 * q, q, i)),
        2100,
      ),
    )
    expect(curve.settingPerFlow / 60_000).toBeCloseTo(12, 6)
    expect(curve.idle).toBe(0)
  })
  it('agrees with an independent mean of logarithms where buckets scatter', () => {
    const flows = [3.1, 5.8, 9.2, 11.9]
    const curve = value(
      fitPumpCurve(
        flows.map((q, i) => bucket(36 * (i + 1), q, i)),
        2100,
      ),
    )
    // closed form: least squares of ln Q with unit slope is the geometric mean of S/Q
    const geometric = Math.exp(flows.reduce((sum, q, i) => sum + Math.log((36 * (i + 1)) / q), 0) / 4)
    expect(curve.settingPerFlow / 60_000).toBeCloseTo(geometric, 6)
    expect(curve.scatter).toBeGreaterThan(0.02)
  })
  it('finds the setting at which delivery begins when the pump slips', () => {
    const noise = [1.004, 0.997, 1.002, 0.998, 1.001]
    const trials = [2, 4, 6, 9, 12].map((q, i) => bucket(15 + 10 * q, q * noise[i]!, i))
    const curve = value(fitPumpCurve(trials, 2100))
    expect(curve.idle).toBeGreaterThan(13)
    expect(curve.idle).toBeLessThan(17)
  })
  it('does not invent an idle setting from scatter', () => {
    const noise = [1.03, 0.97, 1.02, 0.98, 1.01]
    const trials = [2, 4, 6, 9, 12].map((q, i) => bucket(10 * q, q * noise[i]!, i))
    expect(value(fitPumpCurve(trials, 2100)).idle).toBe(0)
  })
  it('wants three buckets that caught something', () => {
    expect(codes(fitPumpCurve([bucket(10, 1, 1)], 2100))).toEqual(['trial/too-few'])
    const empty = [10, 20, 30].map((s, i) => bucket(s, i === 1 ? 0 : s, i))
    expect(codes(fitPumpCurve(empty, 2100))).toEqual(['trial/pump-value'])
  })
})

describe('fitBeadModel', () => {
  const bead = (fill: number, width: number, speed: number, i: number) => ({
    at: `bead ${i}`,
    speed,
    width,
    height: 0.02,
    flow: (beadArea(width, 0.02) * speed) / fill,
  })
  it('finds how much of the flow becomes bead (closed form)', () => {
    const model = value(fitBeadModel([0.1, 0.15, 0.2].map((v, i) => bead(0.96, 0.05, v, i))))
    expect(model.fill).toBeCloseTo(0.96, 12)
    expect(model.say).toContain('thinner than set')
  })
  it('width and flow undo one another', () =>
    fc.assert(
      fc.property(
        fc.tuple(
          fc.double({ min: 0.03, max: 0.1, noNaN: true }),
          fc.double({ min: 0.02, max: 0.3, noNaN: true }),
        ),
        ([width, speed]) => {
          const flow = flowForBead(0.93, width, 0.02, speed)
          expect(beadWidth(0.93, flow, speed, 0.02)).toBeCloseTo(width, 12)
        },
      ),
    ))
  it('names a bead that does not belong to the others', () => {
    const trials = [0.97, 0.98, 0.975, 0.985, 0.98, 1.4].map((fill, i) => bead(fill, 0.05, 0.15, i))
    expect(value(fitBeadModel(trials)).outliers).toEqual(['bead 5'])
  })
  it('refuses width and height that are swapped', () => {
    const swapped = [1, 2, 3].map(i => ({ at: `b${i}`, flow: 1e-4, speed: 0.1, width: 0.02, height: 0.05 }))
    expect(codes(fitBeadModel(swapped))).toContain('trial/bead-upright')
  })
})

describe('fitLags', () => {
  it('is distance over speed, meaned, with its doubt', () => {
    const trial = (distance: number, i: number) => ({
      at: `s${i}`,
      kind: 'start' as const,
      speed: 0.1,
      distance,
    })
    const { start, stop } = value(fitLags([0.05, 0.06, 0.07].map(trial)))
    // hand: 0.5, 0.6, 0.7 s: mean 0.6, deviation 0.1, over √3
    expect(start!.seconds).toBeCloseTo(0.6, 12)
    expect(start!.error).toBeCloseTo(0.1 / Math.sqrt(3), 12)
    expect(stop).toBeUndefined()
  })
  it('with one trial knows no doubt', () => {
    const { stop } = value(fitLags([{ at: 'x', kind: 'stop', speed: 0.2, distance: 0.1 }]))
    expect(stop).toMatchObject({ seconds: 0.5, trials: 1 })
    expect(stop!.error).toBeUndefined()
  })
  it('refuses a negative distance', () =>
    expect(codes(fitLags([{ at: 'x', kind: 'stop', speed: 0.2, distance: -0.1 }]))).toEqual([
      'trial/lag-value',
    ]))
})

describe('fitCornerModel', () => {
  const corner = (share: number, power: number, i: number) => ({
    at: `c${i}`,
    straightSpeed: 0.2,
    cornerSpeed: 0.2 * share,
    straightWidth: 0.05,
    cornerWidth: 0.05 * share ** -power,
  })
  it('finds the power the samples were made with, and the corner speed that keeps the bead (closed form)', () => {
    const model = value(fitCornerModel([0.25, 0.5, 0.75].map((share, i) => corner(share, 0.4, i))))
    expect(model.swelling).toBeCloseTo(0.4, 6)
    expect(model.slowest).toBeCloseTo(1.1 ** -2.5, 6)
  })
  it('wants at least one slow corner', () =>
    expect(codes(fitCornerModel([corner(1, 0.4, 0)]))).toEqual(['trial/no-slow-down']))
})

describe('nextTrials', () => {
  const machine = machineProfiles[0]!
  const none = { pump: [], bead: [], lag: [], corner: [] }
  const pumpSettings = (done: object = {}) =>
    nextTrials(machine, { ...none, ...done })
      .filter(({ kind }) => kind === 'pump')
      .map(({ setting }) => setting)

  it('begins at the far end of the pump, then the near one (best design of a straight line)', () => {
    const [first, second] = pumpSettings()
    // hand: 22 and 2 L/min at 10 per L/min
    expect(first).toBeCloseTo(220, 9)
    expect(second).toBeCloseTo(20, 9)
  })
  it('goes where nothing was tried', () => {
    const low = [20, 30, 40].map((setting, i) => ({ at: `${i}`, setting, caught: 1, during: 1 }))
    expect(pumpSettings({ pump: low })[0]).toBeCloseTo(220, 9)
  })
  it('asks for nothing once enough is known', () => {
    const trial = { at: '', setting: 1, caught: 1, during: 1 }
    const bead = { at: '', flow: 1, speed: 1, width: 1, height: 1 }
    const corner = { at: '', cornerSpeed: 1, straightSpeed: 1, cornerWidth: 1, straightWidth: 1 }
    const lag = (kind: 'start' | 'stop') => ({ at: '', kind, speed: 1, distance: 1 })
    const done = {
      pump: Array.from({ length: 6 }, () => trial),
      bead: Array.from({ length: 5 }, () => bead),
      lag: (['start', 'stop'] as const).flatMap(kind => [lag(kind), lag(kind), lag(kind)]),
      corner: [corner, corner, corner],
    }
    expect(nextTrials(machine, done)).toEqual([])
  })
})
