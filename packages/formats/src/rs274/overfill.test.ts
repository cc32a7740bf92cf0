import { machineProfile } from '@dawnlift/core/machine'
import { describe, expect, it } from 'vitest'
import { inspectRun, type Overfill, readMachineFile } from './index.js'

/** 0.5 m/s², corners left by 2 mm, 10 S to the litre a minute. */
const machine = machineProfile('gantry-12')!

function overfill(...lines: string[]): Overfill {
  const text = ['G21 G90 G17 G94', 'G0 X0 Y0 Z0 C0', ...lines, 'M5', 'M2'].join('\n')
  const read = readMachineFile(text)
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return inspectRun(read.value, { machine }).overfill!
}

describe('what is laid too much while the nozzle brakes', () => {
  // hand: 6 L/min = 10⁻⁴ m³/s at 0.1 m/s; from rest and to rest costs v/2a = 0.1 s each over 10 s
  it('is the flow over half the ramps of a straight bead', () => {
    const { volume, share } = overfill('S60 M3', 'G1 X1000 F6000')
    expect(volume).toBeCloseTo(2e-5, 12)
    expect(share).toBeCloseTo(0.02, 9)
  })
  // hand: a right angle left by 2 mm is an arc of 4.828 mm, taken at 49.13 mm/s; each ramp beside it costs
  // (v − v꜀)²/(2·a·v) = 0.025873 s
  it('grows by two ramps at a corner, where the worst of it lies', () => {
    const { volume, worst } = overfill('S60 M3', 'G1 X1000 F6000', 'G1 Y1000')
    expect(volume).toBeCloseTo(1e-4 * (0.2 + 2 * 0.025873), 10)
    expect(worst).toMatchObject({ line: 5, x: 1, y: 0 })
    expect(worst.volume).toBeCloseTo(1e-4 * (0.1 + 0.025873), 10)
  })
  it('is none without the pump, and not known without its setting or the machine', () => {
    const still = overfill('S60 M3', 'G1 X1000 F6000', 'M5', 'G1 X2000')
    const run = overfill('S60 M3', 'G1 X1000 F6000', 'G1 X2000')
    // the ramp to rest lies behind the pump's stop
    expect(still.volume).toBeCloseTo(1e-5, 12)
    expect(run.volume).toBeCloseTo(2e-5, 12)
    expect(overfill('M3', 'G1 X1000 F6000')).toBeUndefined()
    const read = readMachineFile('G21 G90 G94\nG0 X0 Y0 Z0\nS60 M3\nG1 X100 F6000\nM5\nM2')
    expect(read.ok && inspectRun(read.value).overfill).toBeUndefined()
  })
})
