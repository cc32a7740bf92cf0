import { yieldStress } from '@dawnlift/core/mix'
import { describe, expect, it } from 'vitest'
import { parseJob } from './index.js'

const job = (mix: string) => `dawnlift: 1
name: Wall
site: { name: yard, latitude: 41.2°, longitude: 3.4° W, timeZone: Europe/Madrid }
calendar: { firstDay: 2026-05-04 }
weather: { file: hours.epw }
walls: [{ id: W1, makeUp: single, height: 1 m, path: [[0 m, 0 m], [6 m, 0 m]] }]
mix: ${mix}`
const mixOf = (mix: string) => {
  const read = parseJob(job(mix))
  if (!read.ok) throw new Error(read.problems[0]?.say)
  return read.value.job.mix
}

describe('the mix a job writes', () => {
  it('carries the rest that the bond test still passed after', () => {
    const { bondTest } = mixOf('{ bondTest: { rest: 25 min, source: shear test of 4 May } }')
    expect(bondTest).toEqual({ rest: 1500, source: 'shear test of 4 May' })
    expect(mixOf('{ bondTest: { rest: 25 min } }').bondTest?.source).toBe('the job')
  })
  it('slips in the hose on a layer of its viscosity and thickness', () =>
    // hand: 1.2 Pa·s over 2 mm are 600 Pa·s/m
    expect(
      mixOf(
        '{ pumping: { yield: 800 Pa, slipYield: 50 Pa, slipLayer: { viscosity: 1.2 Pa·s, thickness: 2 mm } } }',
      ).pumping,
    ).toEqual({ yield: 800, slipYield: 50, slipViscosity: 600 }))
  it('grows no further than its tests went', () => {
    const growth = 'yield: { growth: linear, start: 2 kPa, rate: 1 Pa/s }'
    const tested = mixOf(`{ ${growth}, testedTo: 30 min }`)
    // hand: 2000 Pa + 1 Pa/s · 1800 s, held from then on
    expect(yieldStress(tested.fitted.yield, 1800)).toBeCloseTo(3800, 6)
    expect(yieldStress(tested.fitted.yield, 7200)).toBeCloseTo(3800, 6)
    expect(yieldStress(mixOf(`{ ${growth} }`).fitted.yield, 7200)).toBeCloseTo(9200, 6)
    const stiff = mixOf('{ stiffness: { start: 200 kPa, rate: 100 Pa/s }, testedTo: 30 min }')
    expect(stiff.lower.stiffness.until).toBe(1800)
  })
  it('names a layer without thickness', () => {
    const read = parseJob(
      job('{ pumping: { yield: 800 Pa, slipYield: 50 Pa, slipLayer: { viscosity: 1 Pa·s } } }'),
    )
    expect(read.ok ? [] : read.problems.map(({ at }) => at).join()).toContain('slipLayer')
  })
})
