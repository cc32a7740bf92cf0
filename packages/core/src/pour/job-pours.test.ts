import { describe, expect, it } from 'vitest'
import type { Wall } from '../job/index.js'
import { ageAtStrength, defaultMix, strengthAt } from '../mix/index.js'
import {
  bearablePressure,
  columnCavity,
  flowingGrout,
  headPressure,
  jobPours,
  neededStrength,
} from './index.js'

const wall = { id: 'w1', base: 0, top: 2.4 } as Wall
const column = { id: 'C1', wall: 'w1', at: 1, length: 0.2, thickness: 0.25, cover: 0.03 }
const print = { beadWidth: 0.05, layerHeight: 0.02, cornerRadius: 0.05, overhang: 0.1, speed: 0.1 }
const job = { columns: [column], walls: [wall], print, mix: defaultMix }

describe('neededStrength', () => {
  const cavity = columnCavity(column, wall, 0.05)
  it('is the strength at which the shell just bears the head', () => {
    const needed = neededStrength(cavity, flowingGrout, 0.8)
    expect(bearablePressure(cavity, needed) / headPressure(flowingGrout.density, 0.8)).toBeCloseTo(1, 12)
  })
  it('of 0.8 m in a span of four shell thicknesses is about 7.2 MPa', () => {
    // hand: 2250·9.81·0.8 = 17.66 kPa · 1.6 = 28.25 kPa; · 0.75 · 16 = 0.339 MPa; / 0.5 = 0.678; / 0.252 = 2.691; squared 7.24
    expect(neededStrength(cavity, flowingGrout, 0.8) / 1e6).toBeCloseTo(7.24, 2)
  })
  it('grows with the square of the head', () =>
    expect(neededStrength(cavity, flowingGrout, 1) / neededStrength(cavity, flowingGrout, 0.5)).toBeCloseTo(
      4,
      9,
    ))
})

describe('jobPours', () => {
  it('plans each column and says when its shell is ready for a full lift', () => {
    const { pours, findings } = jobPours(job, () => 20e6)
    expect(pours).toHaveLength(1)
    expect(pours[0]!.volume).toBeCloseTo(0.2 * 0.15 * 2.4, 12)
    expect(pours[0]!.lifts).toBe(2)
    expect(pours[0]!.ageNeeded).toBe(ageAtStrength(defaultMix.strength, pours[0]!.strengthNeeded))
    expect(findings.every(({ verdict }) => verdict === 'pass')).toBe(true)
  })
  it('asks for the strength of a lift that the shell will bear, and not for one that no mix reaches', () => {
    const wide = { ...column, length: 0.3 }
    const [pour] = jobPours({ ...job, columns: [wide] }, () => 20e6).pours
    // hand: 1.2 m over 0.3 m of 50 mm shell would ask for 26.49 kPa·1.6·0.75·36/0.5/0.252 squared: 82 MPa
    expect(neededStrength(columnCavity(wide, wall, 0.05), flowingGrout, 1.2) / 1e6).toBeCloseTo(82.5, 0)
    expect(pour!.tallestLift).toBeLessThan(1.2)
    expect(2.4 / pour!.tallestLift).toBeCloseTo(Math.round(2.4 / pour!.tallestLift), 9)
    expect(pour!.strengthNeeded).toBeLessThan(strengthAt(defaultMix.strength, 28 * 86_400))
    expect(pour!.ageNeeded).toBeLessThan(28 * 86_400)
  })
  it('speaks the job’s own units', () => {
    const told = jobPours({ ...job, units: 'imperial' }, () => 20e6).pours[0]!.findings.map(({ say }) => say)
    expect(told.join(' ')).toMatch(/psi .*"/s)
    expect(told.join(' ')).not.toMatch(/ kPa| mm| m /)
  })
  it('says so where a mix never gets strong enough for a full lift', () => {
    const wide = { ...column, length: 1.2 }
    expect(jobPours({ ...job, columns: [wide] }, () => 20e6).pours[0]!.ageNeeded).toBeUndefined()
  })
  it('finds a column without room between its beads', () => {
    const { pours, findings } = jobPours({ ...job, columns: [{ ...column, thickness: 0.1 }] }, () => 20e6)
    expect(pours).toEqual([])
    expect(findings).toMatchObject([{ check: 'pour-room', verdict: 'fail' }])
  })
})
