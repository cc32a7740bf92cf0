import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Relief } from '../job/index.js'
import { reliefAt, reliefLean } from './relief.js'

const relief: Relief = { face: 'left', pattern: 'lozenge', depth: 0.02, pitch: 0.4, rise: 0.6 }

describe('reliefAt', () => {
  // closed form: cos·cos at crest, at a quarter pitch, and half a rise up.
  it.each([
    [0, 0, 0.02],
    [0.1, 0, 0],
    [0, 0.3, -0.02],
    [0.2, 0.3, 0.02],
  ])('of a lozenge at station %d and height %d is %d', (s, z, d) =>
    expect(reliefAt(relief, s, z)).toBeCloseTo(d, 12),
  )
  it('stays within its depth', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('flute', 'ripple', 'lozenge'),
        fc.double({ min: 0, max: 9, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (pattern, s, z) => {
          expect(Math.abs(reliefAt({ ...relief, pattern, ramp: [2, 4] }, s, z))).toBeLessThanOrEqual(
            0.02 + 1e-15,
          )
        },
      ),
    )
  })
  it('grows along its ramp from nothing to full', () => {
    const ramped: Relief = { ...relief, pattern: 'ripple', ramp: [1, 3] }
    expect([0.5, 1, 2, 3, 4].map(s => reliefAt(ramped, s, 0))).toEqual([0, 0, 0.01, 0.02, 0.02])
  })
  it('leans no more than its steepest', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3, noNaN: true }), z => {
        const step = (reliefAt(relief, 0, z + 1e-6) - reliefAt(relief, 0, z)) / 1e-6
        expect(Math.abs(step)).toBeLessThanOrEqual(reliefLean(relief) + 1e-6)
      }),
    )
  })
})
