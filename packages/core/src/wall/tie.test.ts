import { describe, expect, it } from 'vitest'
import {
  distance,
  flattenPath,
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

describe('a rounded tie', () => {
  const leg = 0.05
  const rounded = (pattern: 'zigzag' | 'crosstie', reach: number) =>
    tiePath(straight, pattern, peaks, reach, { leg })
  const sidesOf = (path: Path) => path.points.map(([, y]) => y)

  // Hand: (0.3² + 4·0.06² − 0.05²)/(8·0.06) = 0.2122917 m and (0.3² + 4·0.15² − 0.05²)/(8·0.15) = 0.1479167 m keep 0.05 m of
  // each leg; swinging 0.2 m, peaks 0.3 m apart have half circles of 0.15 m on legs of 2·(0.2 − 0.15) = 0.1 m.
  it.each([
    [0.06, 0.2122917, 0.05],
    [0.15, 0.1479167, 0.05],
    [0.2, 0.15, 0.1],
  ])('keeps the legs straight as far as told: zigzag swinging %d m', (reach, radius, straightPart) => {
    const path = rounded('zigzag', reach)
    const legs = path.bulges.flatMap((bulge, i) =>
      bulge === 0 ? [distance(path.points[i]!, path.points[i + 1]!)] : [],
    )
    expect(legs[1]).toBeCloseTo(straightPart, 5)
    const arc = path.bulges.findIndex(bulge => bulge !== 0)
    const sweep = 4 * Math.atan(Math.abs(path.bulges[arc + 2]!))
    expect(distance(path.points[arc + 2]!, path.points[arc + 3]!)).toBeCloseTo(
      2 * radius * Math.sin(sweep / 2),
      6,
    )
  })
  it.each([
    ['zigzag', 0.06],
    ['zigzag', 0.15],
    ['crosstie', 0.06],
    ['crosstie', 0.15],
  ] as const)('has no corner but at its ends: %s, swinging %d m', (pattern, reach) => {
    const path = rounded(pattern, reach)
    for (const station of pointStations(path).slice(1, -1))
      expect(distance(pathTangent(path, station - 1e-9), pathTangent(path, station + 1e-9))).toBeLessThan(
        1e-6,
      )
  })
  it.each([
    ['zigzag', 0.06],
    ['crosstie', 0.06],
  ] as const)('touches both wythes where the sharp one does: %s', (pattern, reach) => {
    const onArcs = flattenPath(rounded(pattern, reach), 1e-7)
    const tops = (side: number) => onArcs.filter(([, y]) => Math.abs(y - side * reach) < 2e-6)
    expect(Math.max(...sidesOf({ ...rounded(pattern, reach), points: onArcs }))).toBeLessThanOrEqual(
      reach + 1e-9,
    )
    for (const { station, side } of peaks.slice(1, -1))
      expect(tops(side).some(([x]) => Math.abs(x - station) < 0.12)).toBe(true)
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
