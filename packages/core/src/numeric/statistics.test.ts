import { describe, expect, it } from 'vitest'
import { mean, minimum, normalQuantile, standardDeviation, studentQuantile, uniformFrom } from './index.js'

describe('normalQuantile', () => {
  // published: any table of the normal distribution; the formula claims 4.5e-4.
  it.each([
    [0.05, -1.64485],
    [0.5, 0],
    [0.9, 1.28155],
    [0.975, 1.95996],
    [0.99, 2.32635],
  ])('of %d is %d', (share, z) => expect(Math.abs(normalQuantile(share) - z)).toBeLessThan(4.5e-4))
})

describe('studentQuantile', () => {
  // published: tables of Student's t at 95 %; tolerance as the function claims.
  it.each([
    [1, 6.3138, 0.05],
    [2, 2.92, 0.015],
    [5, 2.015, 0.002],
    [30, 1.6973, 0.001],
  ])('at 95 %% with %d degrees of freedom is %d', (free, t, share) =>
    expect(Math.abs(studentQuantile(0.95, free) / t - 1)).toBeLessThan(share),
  )
  it('becomes the normal value with many degrees of freedom', () =>
    expect(studentQuantile(0.05, 1e6)).toBeCloseTo(normalQuantile(0.05), 5))
})

describe('minimum', () => {
  it('finds the bottom of a parabola (closed form)', () =>
    expect(minimum(x => (x - 1.7) ** 2, -3, 10, 1e-7)).toBeCloseTo(1.7, 6))
  it('of a rising function is its lower end', () => expect(minimum(x => x, 2, 3, 1e-9)).toBeCloseTo(2, 8))
})

describe('uniformFrom', () => {
  it('gives the same numbers for the same seed', () => {
    const [one, two] = [uniformFrom(3), uniformFrom(3)]
    expect([one(), one(), one()]).toEqual([two(), two(), two()])
  })
  it('has no drift, within a run and across small seeds', () => {
    // closed form: mean 1/2, deviation √(1/12); a mean of 1000 scatters by 0.0091, four of those are allowed
    const random = uniformFrom(1)
    const run = Array.from({ length: 1000 }, () => random())
    const firsts = Array.from({ length: 1000 }, (_, seed) => uniformFrom(seed + 1)())
    for (const sample of [run, firsts]) {
      expect(Math.abs(mean(sample) - 0.5)).toBeLessThan(0.037)
      expect(standardDeviation(sample)).toBeCloseTo(Math.sqrt(1 / 12), 1)
    }
  })
})
