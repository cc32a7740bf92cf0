import { describe, expect, it } from 'vitest'
import { formulas, machinePoint, machineProfile, machineProfiles, pumpFlow, pumpSetting } from './index.js'

describe('machine profiles', () => {
  it.each(machineProfiles)('$name has room to move, positive limits and a pump range', machine => {
    for (const [least, most] of Object.values(machine.reach)) expect(most).toBeGreaterThan(least)
    const { printSpeedMost, travelSpeed, liftSpeed, acceleration, cornerDeviation, pump } = machine
    for (const value of [printSpeedMost, travelSpeed, liftSpeed, acceleration, cornerDeviation])
      expect(value).toBeGreaterThan(0)
    expect(pump.flowMost).toBeGreaterThan(pump.flowLeast)
  })
  it('are found by name only', () => {
    expect(machineProfile('gantry-12')?.reach.x).toEqual([0, 12])
    expect(machineProfile('no such machine')).toBeUndefined()
  })
  it('give back the flow that a pump setting was made from', () => {
    for (const machine of machineProfiles)
      expect(pumpFlow(machine, pumpSetting(machine, 1.5e-4))).toBeCloseTo(1.5e-4, 15)
  })
  it('ask S 100 for ten litres a minute on the small gantry', () => {
    // hand: 10 S per L/min
    const machine = machineProfiles[0]!
    expect(pumpSetting(machine, 10 / 60000)).toBeCloseTo(100, 9)
  })
})

describe('machinePoint', () => {
  it('turns about the building origin, then shifts', () => {
    // hand: (2, 1) turned a quarter left is (−1, 2)
    const [x, y] = machinePoint({ x: 10, y: 20, z: 0, turn: Math.PI / 2 }, [2, 1])
    expect(x).toBeCloseTo(9, 12)
    expect(y).toBeCloseTo(22, 12)
  })
})

describe('formulas', () => {
  it('have one name each and give a finite answer to their own example', () => {
    expect(new Set(formulas.map(formula => formula.name)).size).toBe(formulas.length)
    for (const formula of formulas) {
      const example = Object.fromEntries(formula.inputs.map(input => [input.name, input.example]))
      expect(Number.isFinite(formula.calculate(example)), formula.name).toBe(true)
    }
  })
  it.each([
    ['move-time', 5.4],
    ['move-time-jerk', 5.65],
    ['turn-time', 1.5],
  ])('%s answers in its shown unit', (name, expected) => {
    const formula = formulas.find(each => each.name === name)!
    const example = Object.fromEntries(formula.inputs.map(input => [input.name, input.example]))
    expect(formula.calculate(example)).toBeCloseTo(expected, 9)
  })
})
