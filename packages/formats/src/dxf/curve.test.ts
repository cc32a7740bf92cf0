import { distance, type Point } from '@dawnlift/core/geometry'
import { describe, expect, it } from 'vitest'
import { flattenEllipse, flattenSpline, isSpline, splinePoint } from './curve.js'

const length = (points: readonly Point[]) =>
  points.slice(1).reduce((sum, point, i) => sum + distance(points[i]!, point), 0)

describe('splines', () => {
  // closed form: a quarter circle is a rational quadratic with middle weight √½ (Piegl & Tiller, The NURBS Book, from memory).
  const quarter = {
    degree: 2,
    knots: [0, 0, 0, 1, 1, 1],
    points: [
      [1, 0],
      [1, 1],
      [0, 1],
    ] as const,
    weights: [1, Math.SQRT1_2, 1],
  }
  it('with weights run exactly on the circle', () => {
    for (const t of [0, 0.1, 0.5, 0.83, 1]) expect(Math.hypot(...splinePoint(quarter, t))).toBeCloseTo(1, 12)
  })
  it('leave their chords by no more than the tolerance', () => {
    const points = flattenSpline(quarter, 1e-3)
    const sag = points
      .slice(1)
      .map((point, i) => 1 - Math.hypot((point[0] + points[i]![0]) / 2, (point[1] + points[i]![1]) / 2))
    expect(Math.max(...sag)).toBeLessThanOrEqual(1e-3)
  })
  it('of degree one are their control polygon', () => {
    const line = {
      degree: 1,
      knots: [0, 0, 1, 2, 2],
      points: [
        [0, 0],
        [3, 0],
        [3, 4],
      ] as const,
      weights: [1, 1, 1],
    }
    expect(length(flattenSpline(line, 0.01))).toBeCloseTo(7, 9)
  })
  it('with knots that do not fit their points are none', () =>
    expect(isSpline({ ...quarter, knots: [0, 0, 1, 1] })).toBe(false))
})

describe('ellipses', () => {
  // published: perimeter 4·a·E(e²); a 2, b 1 → 9.688448220 (Abramowitz & Stegun table of E, from memory; E(0.75) = 1.2110560276).
  // Chords within 1e-6 m shorten it by less than 1e-5.
  it('have the perimeter of the elliptic integral', () => {
    const points = flattenEllipse(
      { centre: [5, 5], axis: [2, 0], ratio: 0.5, start: 0, end: 2 * Math.PI },
      1e-6,
    )
    expect(Math.abs(length(points) - 8 * 1.2110560276)).toBeLessThan(1e-5)
  })
  it('of ratio one are circles', () => {
    const points = flattenEllipse({ centre: [0, 0], axis: [0, 3], ratio: 1, start: 0, end: Math.PI }, 1e-5)
    expect(points.every(point => Math.abs(Math.hypot(...point) - 3) < 1e-12)).toBe(true)
  })
})
