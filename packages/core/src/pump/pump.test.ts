import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { machineProfiles } from '../machine/index.js'
import { defaultMix } from '../mix/index.js'
import {
  aggregateMost,
  binghamFlow,
  binghamPressure,
  checkPumping,
  formulas,
  linePressure,
  lubricatedPressure,
  residenceTime,
  risePressure,
  speedWindow,
  stoppedHoseTemperature,
  wallStress,
} from './index.js'

const hose = { length: 10, diameter: 0.05 }

describe('binghamFlow', () => {
  // [Buckingham1921], independent: the equation in double precision; printed to five or six digits.
  it.each([
    [2e5, 10, 5, 125, 2.17314e-4],
    [2e5, 10, 5, 100, 17.4947 / 60_000],
    [1e6, 20, 20, 300, 8.6906 / 60_000],
  ])('ΔP %d Pa over %d m, µ %d, τ₀ %d', (pressure, length, viscosity, stress, expected) => {
    const flow = binghamFlow({ length, diameter: 0.05 }, { yield: stress, viscosity }, pressure)
    expect(Math.abs(flow / expected - 1)).toBeLessThan(6e-6) // half a unit in the fifth digit of 8.6906
  })
  it('is 17/48 of the Newtonian flow where the yield stress is half the wall stress (closed form)', () => {
    const half = wallStress(hose, 1e5) / 2
    const share =
      binghamFlow(hose, { yield: half, viscosity: 5 }, 1e5) /
      binghamFlow(hose, { yield: 0, viscosity: 5 }, 1e5)
    expect(share).toBeCloseTo(17 / 48, 12)
  })
  it('is nothing at or below the yield stress', () =>
    expect(binghamFlow(hose, { yield: wallStress(hose, 1e5), viscosity: 5 }, 1e5)).toBe(0))
})

describe('binghamPressure', () => {
  it('of 1 m³/h through 20 m is 13.573 bar (independent)', () => {
    const pressure = binghamPressure({ length: 20, diameter: 0.05 }, { yield: 300, viscosity: 20 }, 1 / 3600)
    expect(pressure / 1e5).toBeCloseTo(13.573, 3)
  })
  it('undoes the flow for any hose and mix', () => {
    const draw = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(
        fc.tuple(draw(1, 80), draw(0.02, 0.1), draw(0, 3000), draw(1, 100), draw(1, 60)),
        ([length, diameter, stress, viscosity, litres]) => {
          const [run, mix, flow] = [{ length, diameter }, { yield: stress, viscosity }, litres / 60_000]
          expect(binghamFlow(run, mix, binghamPressure(run, mix, flow)) / flow).toBeCloseTo(1, 4)
        },
      ),
    )
  })
})

describe('lubricatedPressure', () => {
  const run = { length: 30, diameter: 0.05 }
  const [slip, mix] = [
    { yield: 100, viscosity: 500 },
    { yield: 800, viscosity: 20 },
  ]
  // [Kaplan2000], form from memory; independent arithmetic
  it('of a plug is 4.0977 bar at a wall stress of 170.7 Pa (independent)', () => {
    const pressure = lubricatedPressure(run, slip, mix, 1 / 3600)
    expect(pressure / 1e5).toBeCloseTo(4.0977, 4)
    expect(wallStress(run, pressure)).toBeCloseTo(170.7, 1)
  })
  it('of a mix that shears is the pressure whose slip and shear add up to the flow (independent re-derivation)', () => {
    const soft = { yield: 120, viscosity: 20 }
    const pressure = lubricatedPressure(run, slip, soft, 2 / 3600)
    const stress = wallStress(run, pressure)
    const slipping = (stress - slip.yield) / slip.viscosity
    const shearing = (0.025 / soft.viscosity) * (stress / 4 - soft.yield / 3)
    expect((slipping + shearing) * Math.PI * 0.025 ** 2 * 3600).toBeCloseTo(2, 9)
  })
  it('grows with flow and length', () => {
    const at = (flow: number, length: number) => lubricatedPressure({ ...run, length }, slip, mix, flow)
    expect(at(2e-4, 30)).toBeGreaterThan(at(1e-4, 30))
    expect(at(2e-4, 40) / at(2e-4, 30)).toBeCloseTo(4 / 3, 12)
  })
})

describe('hose', () => {
  it('of 50 mm carries 16.7 mm angular and 20 mm rounded grain ([ACI304-2R], read second-hand)', () => {
    expect(aggregateMost(0.05, 'angular') * 1000).toBeCloseTo(16.7, 1)
    expect(aggregateMost(0.05, 'rounded') * 1000).toBeCloseTo(20, 9)
  })
  it('carries larger grain the wider it is, rounded more than angular', () => {
    // hand: a third of 60 mm and two fifths of 25 mm.
    expect(aggregateMost(0.06, 'angular')).toBeCloseTo(0.02, 12)
    expect(aggregateMost(0.025, 'rounded')).toBeCloseTo(0.01, 12)
    expect(aggregateMost(0.04, 'rounded')).toBeGreaterThan(aggregateMost(0.04, 'angular'))
  })
  it('of a square metre holds the mix its length over the speed, half as long at twice the flow', () => {
    // closed form: 1 m² bore at 0.5 m³/s moves at 0.5 m/s.
    const bore = Math.sqrt(4 / Math.PI)
    expect(residenceTime({ length: 7, diameter: bore }, 0.5)).toBeCloseTo(14, 12)
    expect(residenceTime({ length: 7, diameter: bore }, 1)).toBeCloseTo(7, 12)
  })
  it('holds the mix for its volume over the flow', () =>
    // hand: π/4 · 0.04² · 25 = 31.416 L at 8 L/min: 3.927 min
    expect(residenceTime({ length: 25, diameter: 0.04 }, 8 / 60_000) / 60).toBeCloseTo(3.927, 3))
  it('needs 0.226 bar a metre of rise at 2300 kg/m³', () =>
    expect(risePressure(2300, 1)).toBeCloseTo(22_563, 6))
  it('at rest goes to the temperature around it', () => {
    const stopped = { diameter: 0.04, end: 50, conductance: 10, density: 2150, specificHeat: 1100 }
    // hand: time constant ρcD/(4U) = 2150·1100·0.04/40 = 2365 s: 1/e of the gap is left after it
    expect(stoppedHoseTemperature(stopped, 25, 2365)).toBeCloseTo(50 - 25 / Math.E, 9)
    expect(stoppedHoseTemperature(stopped, 25, 0)).toBe(25)
    expect(stoppedHoseTemperature(stopped, 25, 1e6)).toBeCloseTo(50, 9)
  })
})

describe('speedWindow', () => {
  const machine = machineProfiles[0]!
  it('is bounded by pump and machine', () => {
    const window = speedWindow(machine, 0.05, 0.015)!
    // published section: 701.715 mm² for 50 × 15 mm; 2 L/min / 701.7 mm² = 47.5 mm/s
    expect(window.least * 1000).toBeCloseTo(2e6 / 60 / 701.715, 3)
    expect(window.most).toBe(machine.printSpeedMost)
    expect(window.mostBy).toBe('machine')
  })
  it('is none for a bead finer than the pump can feed', () =>
    expect(speedWindow(machine, 0.012, 0.005)).toBeUndefined())
})

describe('checkPumping', () => {
  const line = {
    machine: machineProfiles[0]!,
    mix: defaultMix,
    batching: { hoseLength: 25, hoseDiameter: 0.05 },
    flow: 8 / 60_000,
    rise: 3,
    temperature: 25,
  }
  const verdicts = (more: object) =>
    Object.fromEntries(checkPumping({ ...line, ...more }).map(({ check, verdict }) => [check, verdict]))

  it('lets the default mix through a usual hose', () =>
    expect(new Set(Object.values(verdicts({})))).toEqual(new Set(['pass'])))
  it('warns where little pressure is left, and fails where the pump has too little', () => {
    // hand: 40 m of 20 mm hose: q = 0.424 m/s, 2·40/0.01 · (100 + 500·0.424) = 25 bar and 0.6 bar of rise, of 30 bar
    expect(verdicts({ batching: { hoseLength: 40, hoseDiameter: 0.02 } })['pump-pressure']).toBe('warn')
    expect(verdicts({ batching: { hoseLength: 60, hoseDiameter: 0.02 } })['pump-pressure']).toBe('fail')
  })
  it('brackets the pressure between slip and shear', () => {
    const { slipping, shearing } = linePressure(line)
    expect(slipping).toBeLessThan(shearing)
  })
  it('without pump tests takes the static yield stress and no slip', () => {
    const { pumping: _, ...mix } = defaultMix
    const { slipping, shearing } = linePressure({ ...line, mix })
    expect(slipping).toBe(shearing)
    expect(shearing).toBeGreaterThan(linePressure(line).shearing)
  })
  it('refuses grain that locks in the hose, and warns of grain a rotor-stator pump wears on', () => {
    const coarse = verdicts({ mix: { ...defaultMix, aggregate: 0.018 } })
    expect(coarse['hose-aggregate']).toBe('fail')
    expect(coarse['pump-aggregate']).toBe('warn')
  })
  it('fails a hose that outlasts the open time in the heat', () =>
    expect(verdicts({ flow: 0.5 / 60_000, temperature: 38 })['hose-open-time']).toBe('fail'))
  it('speaks of inches, psi and °F where the site does', () => {
    const said = checkPumping({ ...line, units: 'imperial' }).map(({ say }) => say)
    // Hand: 50 mm = 1.97 in; 20 °C = 68 °F.
    expect(said.find(say => say.startsWith('Grain'))).toContain('hose of 1.97 in')
    expect(said.at(-1)).toContain('68 °F')
    expect(said.join(' ')).not.toMatch(/ mm|bar|°C/)
  })
})

describe('formulas of the pump, in shown units', () => {
  const example = (name: string, more: Record<string, number> = {}) => {
    const formula = formulas.find(each => each.name === name)!
    return formula.calculate({ ...Object.fromEntries(formula.inputs.map(i => [i.name, i.example])), ...more })
  }
  it.each([
    ['hose-flow-bingham', {}, 8.6906],
    ['hose-pressure-bingham', { flow: 1000 / 60 }, 13.573],
    ['hose-pressure-slip', { flow: 1000 / 60, length: 30, yield: 800 }, 4.0977],
    ['hose-residence', { length: 25, diameter: 40, flow: 8 }, 3.927],
    ['hose-aggregate', {}, 16.667],
  ])('%s', (name, more, expected) => expect(Math.abs(example(name, more) / expected - 1)).toBeLessThan(5e-5))
})
