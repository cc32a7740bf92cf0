import { describe, expect, it } from 'vitest'
import { foreignUnits } from '../../../../tests/foreign-units.js'
import type { Result } from '../result/index.js'
import { fitBeadModel, fitCornerModel, fitLags, fitPumpCurve } from './index.js'

const told = (result: Result<{ readonly say: string }>): string =>
  result.ok ? result.value.say : result.problems.map(({ say }) => say).join(' ')

const bead = (width: number) => ({ at: 'b', flow: 1.4e-4, speed: 0.15, width, height: 0.02 })
const bucket = (setting: number, caught: number) => ({ at: 'p', setting, caught, during: 60 })
const corner = { at: 'c', cornerSpeed: 0.05, straightSpeed: 0.15, cornerWidth: 0.06, straightWidth: 0.05 }

/** What each kind of trial says of a fit and of a trial that cannot be, in a job's units. */
const words = (units: 'metric' | 'imperial'): readonly string[] => [
  told(fitBeadModel([bead(0.05), bead(0.051), bead(0.049)], units)),
  told(fitBeadModel([bead(0.05), bead(0), bead(0.01)], units)),
  told(fitPumpCurve([bucket(30, 6.4), bucket(100, 21), bucket(200, 43)], 2100, units)),
  told(fitPumpCurve([bucket(30, 6.4), bucket(100, 0), bucket(200, 43)], 2100, units)),
  told(fitCornerModel([corner], units)),
  told(fitCornerModel([{ ...corner, cornerWidth: -0.06 }], units)),
  ...[{ distance: 0.08 }, { distance: -0.08 }].map(more => {
    const lags = fitLags([{ at: 's', kind: 'start', speed: 0.15, ...more }], units)
    return lags.ok ? lags.value.start!.say : lags.problems[0]!.say
  }),
]

describe('what trials say', () => {
  it.each(['metric', 'imperial'] as const)('is in the units of a job that is %s', units =>
    expect(words(units).flatMap(said => foreignUnits(said, units))).toEqual([]),
  )
  it('is the same in pounds, gallons and inches', () => {
    const [width, swapped, curve, empty, , thin, , late] = words('imperial')
    // hand: 1.4e-4 m³/s is 2.22 gal/min, 150 mm/s 5.9 in/s, 10 mm 0.39 in; S 9.77 per L/min times 3.785
    expect(width).toMatch(/within ±0\.\d\d in\.$/)
    expect(swapped).toContain('Flow 2.2 gal/min, speed 5.9 in/s, width 0.00 in, height 0.79 in')
    expect(swapped).toContain('The bead is 0.39 in wide and 0.79 in high')
    expect(curve).toMatch(/^S 37\.\d for each gal\/min/)
    expect(empty).toContain('Setting 100, 0 lb in 60 s')
    expect(thin).toContain('Speeds 2.0 in/s and 5.9 in/s, widths -2.36 in and 1.97 in')
    expect(late).toContain('The start trial gives -3.15 in at 5.9 in/s')
  })
})
