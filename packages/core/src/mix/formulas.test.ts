import { describe, expect, it } from 'vitest'
import { formulas as bond } from '../bond/index.js'
import { formulas as mix } from './index.js'

const example = (name: string): number => {
  const formula = [...mix, ...bond].find(each => each.name === name)!
  return formula.calculate(Object.fromEntries(formula.inputs.map(input => [input.name, input.example])))
}

describe('formulas of mix and bond, in shown units', () => {
  it.each([
    ['yield-stress-linear', 2800, 'hand: 1000 + 0.5·3600'],
    ['yield-stress-exponential', 4092.907, 'independent'],
    ['yield-stress-bilinear', 4132, 'hand: 1000 + 6·180 + 0.6·3420'],
    ['green-stiffness', 150.1, 'published [Wolfs2018] at 60 min'],
    ['age-factor', 1.7553, 'independent'],
    ['strength-hyperbola', 30.805, 'independent'],
    ['spread-yield-stress', 26.23, 'independent'],
    ['intermixing-rest', 238.7, 'independent'],
  ])('%s gives %d', (name, expected) => expect(Math.abs(example(name) / expected - 1)).toBeLessThan(2e-4))
})
