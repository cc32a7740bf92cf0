import { describe, expect, it } from 'vitest'
import { eyeOf, firstOrbit, keyed, nearer, shifted, turned } from './orbit.js'

const orbit = firstOrbit([5, 4, 1], 12, 1.6)
const far = (eye: readonly number[]) => Math.hypot(eye[0]! - 5, eye[1]! - 4, eye[2]! - 1)

describe('the eye on the house', () => {
  it('stays as far away while it turns', () =>
    expect(far(eyeOf(turned(orbit, 1.3, 0.2)))).toBeCloseTo(orbit.away, 9))
  it('never goes below the slab or over the top', () => {
    expect(eyeOf(turned(orbit, 0, 99))[2]).toBeGreaterThan(1)
    expect(turned(orbit, 0, -99).rise).toBeLessThan(Math.PI / 2)
  })
  it('looks along +y where it is not turned', () =>
    expect(eyeOf({ turn: 0, rise: 0, away: 3, middle: [0, 0, 0] })).toEqual([0, -3, 0]))
  it('moves to the right of what it sees', () => {
    const looking = { turn: Math.PI / 2, rise: 0.3, away: 3, middle: [0, 0, 0] } as const
    // hand: from +x looking along −x, the right hand points along +y.
    const [x, y] = shifted(looking, 1, 0).middle
    expect([x.toFixed(9), y.toFixed(9)]).toEqual(['0.000000000', '1.000000000'])
  })
  it('comes nearer by a factor, and back', () =>
    expect(nearer(nearer(orbit, 1.2), 1 / 1.2).away).toBeCloseTo(orbit.away, 9))
  it('goes home by a key, and leaves other keys alone', () => {
    expect(keyed(turned(orbit, 1, 0), 'Home', false, orbit)).toBe(orbit)
    expect(keyed(orbit, 'x', false, orbit)).toBeUndefined()
  })
})
