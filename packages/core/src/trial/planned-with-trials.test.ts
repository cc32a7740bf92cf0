import { describe, expect, it } from 'vitest'
import { type Laying, type Machine, machineProfiles, pumpFlow, pumpSetting } from '../machine/index.js'
import type { Result } from '../result/index.js'
import { beadFlow, type Pass, type SectionRoutes } from '../route/index.js'
import { beadArea } from '../wall/index.js'
import { applyTrials, checkCorners, fitLags, fitPumpCurve, pumpedVolume } from './index.js'

const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problems.map(({ say }) => say).join('\n'))
  return result.value
}

describe('applyTrials', () => {
  const machine = machineProfiles[0]!
  const bucket = (setting: number, litres: number) => ({
    at: `${setting}`,
    setting,
    caught: litres * 2,
    during: 60,
  })
  it('puts the measured curve and lags in place of the assumed ones', () => {
    const pump = value(fitPumpCurve([bucket(24, 2), bucket(120, 10), bucket(240, 20)], 2000))
    const lags = value(fitLags([{ at: 'a', kind: 'start', speed: 0.1, distance: 0.08 }]))
    const measured = applyTrials(machine, { pump, lags }).pump
    expect(measured.settingPerFlow / 60_000).toBeCloseTo(12, 6)
    expect(measured.startLag).toBeCloseTo(0.8, 12)
    expect(measured.stopLag).toBe(machine.pump.stopLag)
  })
  it('sets an idling pump by its curve at every flow', () => {
    const pump = value(
      fitPumpCurve(
        [2, 4, 8, 12, 20].map(q => bucket(15 + 10 * q, q)),
        2000,
      ),
    )
    const measured = applyTrials(machine, { pump })
    // hand: 4 L/min need S 15 + 40 = 55, 20 L/min S 15 + 200 = 215
    expect(pumpSetting(measured, 4 / 60_000)).toBeCloseTo(55, 3)
    expect(pumpSetting(measured, 20 / 60_000)).toBeCloseTo(215, 3)
    expect(pumpFlow(measured, 55) * 60_000).toBeCloseTo(4, 3)
    expect(pumpFlow(measured, 0)).toBe(0)
  })
  it('keeps what a thin bead, a swelling corner and both lags were measured to be, and nothing else', () => {
    const lags = value(
      fitLags([
        { at: 'a', kind: 'start', speed: 0.1, distance: 0.08 },
        { at: 'b', kind: 'stop', speed: 0.1, distance: 0.04 },
      ]),
    )
    const measured = applyTrials(machine, { bead: { fill: 0.9 }, corner: { swelling: 0.4 }, lags })
    expect(measured.laying).toEqual({ fill: 0.9, swelling: 0.4, lags: true })
    expect(applyTrials(machine, { lags: { start: lags.start! } }).laying).toBeUndefined()
  })
  it('applied to a machine that has them already changes nothing', () => {
    const measured = applyTrials(machine, { bead: { fill: 0.9 }, corner: { swelling: 0.4 } })
    const again = applyTrials(measured, { bead: { fill: 0.9 }, corner: { swelling: 0.4 } })
    expect(again.pump.flowMost).toBeCloseTo(0.9 * machine.pump.flowMost, 15)
    expect(again.pump.settingPerFlow).toBeCloseTo(machine.pump.settingPerFlow / 0.9, 3)
    expect(again.laying).toEqual(measured.laying)
  })
})

describe('pumpedVolume', () => {
  const machine: Machine = {
    ...machineProfiles[0]!,
    acceleration: 0.5,
    headingRate: 0,
    pump: { ...machineProfiles[0]!.pump, startLag: 0.8, stopLag: 0.4 },
  }
  const straight = (points: readonly (readonly [number, number])[]): Pass => ({
    bead: 'b',
    path: { points, bulges: points.slice(1).map(() => 0), closed: false },
    width: 0.05,
    height: 0.02,
    length: 2,
    volume: 2 * beadArea(0.05, 0.02),
    flow: beadFlow({ width: 0.05, height: 0.02 }, 0.2),
    speeds: points.slice(1).map(() => 0.2),
    time: 0,
    headings: points.map(() => 0),
  })
  const bead = straight([
    [0, 0],
    [2, 0],
  ])
  const layer = (pass: Pass, laying: Laying) =>
    pumpedVolume({ passes: [pass], travels: [], volume: pass.volume }, { ...machine, laying })

  it('is what is drawn where nothing was measured', () => {
    const route = { passes: [bead], travels: [], volume: bead.volume }
    expect(pumpedVolume(route, machine)).toBe(bead.volume)
    expect(layer(bead, {})).toBe(bead.volume)
  })
  it('is more by what does not become bead', () =>
    expect(layer(bead, { fill: 0.9 })).toBeCloseTo(bead.volume / 0.9, 15))
  it('is more by what is pumped before starts and less by what runs out after stops', () =>
    // hand: 914.159 mm² at 200 mm/s for 0.8 − 0.4 s is 73.133 cm³
    expect(layer(bead, { lags: true }) - bead.volume).toBeCloseTo(73.133e-6, 9))
  it('swells where the nozzle speeds up and brakes: the whole pump flow goes on for 0.4 s of ramps each way', () =>
    // hand: s = 1: ∫(v₀/v − 1)dx = v₀²/2a = 40 mm on either ramp, times 50 × 20 mm; the lags as above
    expect(layer(bead, { swelling: 1, lags: true }) - bead.volume).toBeCloseTo(73.133e-6 + 80e-6, 9))
  it('leaves out the last braking that runs without the pump where lags were not measured', () =>
    // hand: at 0.4 s before the end the nozzle still has its 200 mm/s
    expect(layer(bead, { swelling: 1 }) - bead.volume).toBeCloseTo(40e-6, 9))
  it('swells by the half power of the slow-down', () =>
    // hand: s = ½: (v₀^½·v₀^1.5/1.5 − v₀²/2)/a = v₀²/6a = 13.333 mm a ramp
    expect(layer(bead, { swelling: 0.5 }) - bead.volume).toBeCloseTo(13.3333e-6, 9))
  it('swells more the sharper the corner, and thins where corners were measured thin', () => {
    const bent = (x: number, y: number) =>
      straight([
        [0, 0],
        [1, 0],
        [1 + x, y],
      ])
    const more = (pass: Pass, swelling: number) => layer(pass, { swelling }) - pass.volume
    expect(more(bent(0, 1), 0.5)).toBeGreaterThan(more(bent(0.8, 0.6), 0.5))
    expect(more(bent(0.8, 0.6), 0.5)).toBeGreaterThan(more(bead, 0.5))
    expect(more(bead, -0.2)).toBeLessThan(0)
  })
  it('counts passes that follow without a stop as one start', () => {
    const next = {
      ...bead,
      path: {
        ...bead.path,
        points: [
          [2, 0],
          [4, 0],
        ] as const,
      },
    }
    const travel = { from: [2, 0], to: [2, 0], lift: 0, time: 0, turn: 0 } as const
    const both = (joined: boolean) =>
      pumpedVolume(
        { passes: [bead, next], travels: [travel, { ...travel, joined }], volume: 2 * bead.volume },
        { ...machine, laying: { lags: true } },
      )
    expect(both(false) - both(true)).toBeCloseTo(73.133e-6, 9)
  })
})

describe('checkCorners', () => {
  const machine: Machine = {
    ...machineProfiles[0]!,
    acceleration: 0.5,
    headingRate: 0,
    cornerDeviation: 0.002,
  }
  const size = { width: 0.05, height: 0.02 }
  const bent: Pass = {
    ...size,
    bead: 'b',
    path: {
      points: [
        [0, 0],
        [1, 0],
        [1, 1],
      ],
      bulges: [0, 0],
      closed: false,
    },
    length: 2,
    volume: 2 * beadArea(0.05, 0.02),
    flow: beadFlow(size, 0.2),
    speeds: [0.2, 0.2],
    time: 0,
    headings: [0, 0, 0],
  }
  const found = (swelling?: number) => {
    const laying = swelling === undefined ? {} : { laying: { swelling } }
    const route = { passes: [bent], travels: [] } as unknown as SectionRoutes['routes'][number]
    return checkCorners([{ section: 'A', routes: [route] }], { machine: { ...machine, ...laying } })
  }
  it('tells the worst corner of measured swelling, and where', () => {
    // hand: a right angle left by 2 mm is an arc of 4.828 mm, taken at √(0.5·0.004828) = 49.13 mm/s: 24.6 % of 200; (0.2457)^−0.4 = 1.753
    const [finding] = found(0.4)
    expect(finding).toMatchObject({ check: 'corner-swelling', at: 'b', point: [1, 0], verdict: 'warn' })
    expect(finding!.demand).toBeCloseTo(1.753, 3)
    // 1.1^(−1/0.4) = 78.8 %
    expect(finding!.say).toMatch(
      /at 1 corner, most in bead b: 1\.75 times where the nozzle slows to 25 % .* 79 % keeps the bead/,
    )
  })
  it('is silent where the pump follows well enough, or nobody tried', () => {
    expect(found(0.05)).toEqual([])
    expect(found()).toEqual([])
  })
})
