import { describe, expect, it } from 'vitest'
import { leastSquares, quantile, standardDeviation, standardErrors } from './index.js'

// [NIST-StRD] Misra1a: y = b1·(1 − exp(−b2·x)), certified values, from memory (the certified sum of squares confirms them).
const misra = {
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
}
const misraResiduals = ([b1, b2]: readonly number[]) =>
  misra.x.map((x, i) => misra.y[i]! - b1! * (1 - Math.exp(-b2! * x)))

describe('leastSquares', () => {
  it.each([
    ['far', [500, 0.0001]],
    ['near', [250, 0.0005]],
  ])('reaches the certified minimum of NIST Misra1a from the %s start', (_, start) => {
    const fit = leastSquares({ residuals: misraResiduals, start })
    // Certified to eleven digits; central differences leave about seven.
    expect(fit.parameters[0]! / 238.94212918).toBeCloseTo(1, 7)
    expect(fit.parameters[1]! / 5.5015643181e-4).toBeCloseTo(1, 7)
    expect(fit.sumOfSquares / 0.12455138894).toBeCloseTo(1, 8)
    const [e1, e2] = standardErrors(fit)!
    expect(e1! / 2.7070075241).toBeCloseTo(1, 4)
    expect(e2! / 7.2668688436e-6).toBeCloseTo(1, 4)
    expect(fit.converged).toBe(true)
  })

  it('gives the leverages of a straight line', () => {
    // closed form: h = 1/n + (x − x̄)²/Σ(x − x̄)²: for 0…4: 0.6, 0.3, 0.2, 0.3, 0.6; they add up to the parameters
    const x = [0, 1, 2, 3, 4]
    const fit = leastSquares({ residuals: ([a, b]) => x.map(v => a! + b! * v - v ** 2), start: [1, 1] })
    for (const [i, expected] of [0.6, 0.3, 0.2, 0.3, 0.6].entries())
      expect(fit.leverages[i]).toBeCloseTo(expected, 6)
  })

  it('stays inside its bounds and still finds the best of the others', () => {
    // closed form: with the slope held at 0 the best level is the mean, 3
    const y = [5, 4, 2, 1]
    const fit = leastSquares({
      residuals: ([a, b]) => y.map((v, i) => a! + b! * i - v),
      start: [1, 1],
      least: [-Infinity, 0],
    })
    expect(fit.parameters[1]).toBe(0)
    expect(fit.parameters[0]).toBeCloseTo(3, 8)
  })

  it('moves a parameter that starts at zero', () => {
    // closed form: the line 3 + 2·x through four points
    const fit = leastSquares({
      residuals: ([a, b]) => [1, 2, 5, 9].map(x => a! + b! * x - (3 + 2 * x)),
      start: [0, 0],
    })
    expect(fit.parameters[0]).toBeCloseTo(3, 7)
    expect(fit.parameters[1]).toBeCloseTo(2, 7)
  })

  it('has no covariance where the data cannot tell two parameters apart', () => {
    const fit = leastSquares({ residuals: ([a, b]) => [1, 2, 3].map(v => a! + b! - v), start: [1, 0.5] })
    expect(fit.covariance).toBeUndefined()
    expect(fit.parameters[0]! + fit.parameters[1]!).toBeCloseTo(2, 6)
  })
})

describe('quantile', () => {
  it('lies between order statistics', () => expect(quantile([4, 1, 3, 2], 0.25)).toBe(1.75)) // hand: place 0.75 of 1…2
  it('of the ends are the extremes', () => {
    expect(quantile([4, 1, 3, 2], 0)).toBe(1)
    expect(quantile([4, 1, 3, 2], 1)).toBe(4)
  })
  it('goes with a scatter over n − 1', () =>
    expect(standardDeviation([2, 4, 4, 4, 5, 5, 7, 9]) ** 2).toBeCloseTo(32 / 7, 12))
})
