import { describe, expect, it } from 'vitest'
import {
  distance,
  type Path,
  pathLength,
  pathTangent,
  pointStations,
  selfCrossings,
} from '../geometry/index.js'
import { line } from './fixtures/invented.js'
import { tiePath } from './tie.js'
import { partPeaks, runPeaks } from './tie-peak.js'

const straight = line([0, 0], [3, 0])
const bend: Path = {
  points: [
    [0, 0],
    [3, 0],
  ],
  bulges: [0.2],
  closed: false,
}
const peaks = runPeaks({ from: 0, to: 3 }, 0.6)

describe('a tie of ten half pitches of 0.3 m that swings 0.06 m to each side', () => {
  // hand: 10·√(0.3² + 0.12²)
  it('is a zigzag of ten slants', () =>
    expect(pathLength(tiePath(straight, 'zigzag', peaks, 0.06))).toBeCloseTo(10 * Math.hypot(0.3, 0.12), 9))
  // hand: nine crossings of 0.12 m and eight runs of 0.3 m between them
  it('is a meander of nine crossings and eight runs', () =>
    expect(pathLength(tiePath(straight, 'crosstie', peaks, 0.06))).toBeCloseTo(8 * 0.3 + 9 * 0.12, 9))
  // closed form: twenty arcs of run 0.15 and rise 0.06: R = (0.15² + 0.06²)/(2·0.06), angle asin(0.15/R).
  it('is a wave of twenty arcs', () => {
    const radius = (0.15 ** 2 + 0.06 ** 2) / 0.12
    expect(pathLength(tiePath(straight, 'wave', peaks, 0.06))).toBeCloseTo(
      20 * radius * Math.asin(0.15 / radius),
      9,
    )
  })
  // closed form: quarter circles of 0.15 m on legs of 2·0.05 m.
  it('is a wave on legs in a deep cavity', () => {
    expect(pathLength(tiePath(straight, 'wave', peaks, 0.2))).toBeCloseTo(
      20 * 0.15 * (Math.PI / 2) + 10 * 0.1,
      9,
    )
  })
})

describe('a wave', () => {
  it.each([0.06, 0.2])('has no corner, swinging %d m', reach => {
    const path = tiePath(straight, 'wave', peaks, reach)
    for (const station of pointStations(path).slice(1, -1))
      expect(distance(pathTangent(path, station - 1e-9), pathTangent(path, station + 1e-9))).toBeLessThan(
        1e-6,
      )
  })
})

describe('a tie along a bend', () => {
  it.each(['zigzag', 'crosstie', 'wave'] as const)('does not cross itself: %s', pattern =>
    expect(
      selfCrossings(tiePath(bend, pattern, runPeaks({ from: 0, to: pathLength(bend) }, 0.5), 0.06)),
    ).toEqual([]),
  )
})

describe('partPeaks', () => {
  it('keeps the peaks inside and adds one at each end, on the other side', () => {
    expect(partPeaks(peaks, { from: 0.5, to: 1.3 })).toEqual(
      [
        { station: 0.5, side: 1 },
        { station: expect.closeTo(0.9, 9), side: 1 },
        { station: 1.3, side: -1 },
      ].map((peak, i) => (i === 0 ? { ...peak, side: -1 } : peak)),
    )
  })
  it('ties a part shorter than a half pitch once across', () =>
    expect(partPeaks(peaks, { from: 0.62, to: 0.8 }).map(({ side }) => side)).toEqual([-1, 1]))
})
