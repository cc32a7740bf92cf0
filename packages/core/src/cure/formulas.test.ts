import { describe, expect, it } from 'vitest'
import { formulas } from './index.js'

const example = (name: string): number => {
  const formula = formulas.find(each => each.name === name)!
  return formula.calculate(Object.fromEntries(formula.inputs.map(input => [input.name, input.example])))
}

describe('formulas of curing, in shown units', () => {
  it.each([
    ['age-factor-danish', 1.5737, 'independent'],
    ['age-factor-eurocode', 1.5662, 'independent'],
    ['strength-share-aci', 70.35, 'hand'],
    ['strength-share-eurocode', 77.88, 'hand'],
    ['hydration-end', 72.04, 'published [Mills1966]'],
    ['hydration', 46.57, 'independent'],
    ['cement-heat', 489.58, 'hand'],
    ['adiabatic-rise', 80.11, 'hand'],
    ['wind-film', 11.8, 'hand: 2.8 + 3·3'],
    ['cold-least-kept', 13, 'published [ACI306-2016], from memory'],
  ] as const)('%s gives %d (%s)', (name, expected, _origin) =>
    expect(Math.abs(example(name) / expected - 1)).toBeLessThan(2e-4),
  )

  it('have names of their own, examples inside their ranges and a source', () => {
    expect(new Set(formulas.map(({ name }) => name)).size).toBe(formulas.length)
    for (const { inputs, source } of formulas) {
      expect(source).not.toBe('')
      for (const { least = -Infinity, most = Infinity, example: given } of inputs) {
        expect(given).toBeGreaterThanOrEqual(least)
        expect(given).toBeLessThanOrEqual(most)
      }
    }
  })
})
