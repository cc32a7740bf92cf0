import { describe, expect, it } from 'vitest'
import { defaultMix } from '../mix/index.js'
import { makeInLift } from './bays.js'
import type { StandPanel } from './stand-geometry.js'
import { makeStanding } from './standing.js'

const panel: StandPanel = {
  place: 'wall A, 0.00–3.00 m',
  wall: 'A',
  from: 0,
  to: 3,
  length: 3,
  bottom: 0,
  top: 2.7,
  supports: 'both',
  make: { kind: 'double', thickness: 0.25, bead: 0.05, web: 'zigzag', pitch: 0.6 },
  bays: [
    { bottom: 0, top: 1, width: 0.55 },
    { bottom: 1, top: 1.1, width: 1.2 },
    { bottom: 1.1, top: 2, width: 0.9 },
  ],
}
const pitchOf = (foot: number, top: number) => {
  const make = makeInLift(panel, foot, top)
  return make.kind === 'double' ? make.pitch : Number.NaN
}

describe('the bays of a wythe as printed', () => {
  it('never narrow the pitch of the drawing', () => expect(pitchOf(0, 0.9)).toBe(0.6))
  it('widen it where they stand over half their width', () => expect(pitchOf(1.1, 2)).toBeCloseTo(0.9, 9))
  it('do not when they stand over less: ties over and under a box hold the bay', () =>
    expect(pitchOf(0.2, 1.1)).toBe(0.6))
  it('do from foot to top of a lift lower than half their width: nothing is over the top yet', () =>
    expect(pitchOf(1.2, 1.5)).toBeCloseTo(0.9, 9))
  it('do up to the top of a lift over a quarter of their width', () => {
    expect(pitchOf(0.7, 1.35)).toBeCloseTo(0.9, 9)
    expect(pitchOf(0.7, 1.2)).toBe(0.6)
  })
  it('count together with wider ones next to them', () =>
    // 0.1 m of 1.2 and 0.4 m of 0.9: bays of at least 0.81 stand over 0.5 m, more than half of 0.9
    expect(pitchOf(1, 1.5)).toBeCloseTo(0.9, 9))
  it('are told apart from lift to lift of one place', () => {
    const rule = (value: number) => ({ value, source: 'the job' })
    const stands = makeStanding({
      mix: defaultMix,
      print: { layerHeight: 0.02 },
      rules: { standSafety: rule(1.5), imperfection: rule(0.6) },
      sections: [{ section: 'A', panels: [panel] }],
    })
    const layerEnds = Array.from({ length: 40 }, (_, i) => (i + 1) * 420)
    const trial = { section: 'A', start: 0, layerEnds, temperature: 20 }
    expect(stands({ ...trial, firstLayer: 56 }).layers).toBeLessThan(
      stands({ ...trial, firstLayer: 1 }).layers,
    )
  })
})
