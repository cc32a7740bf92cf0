import { describe, expect, it } from 'vitest'
import { calculateFormula } from '../formula/index.js'
import { formulas } from './index.js'

const example = (name: string): number => {
  const formula = formulas.find(each => each.name === name)!
  return formula.calculate(Object.fromEntries(formula.inputs.map(input => [input.name, input.example])))
}

describe('formulas of the weather, in shown units', () => {
  it.each([
    ['evaporation-uno', 0.9578, 'independent: worked out apart'],
    ['evaporation-aci', 0.9998, 'independent'],
    ['saturation-pressure', 4246.0, 'published [ASHRAE2017] table 3 at 30 °C, from memory'],
    ['wet-bulb', 22.005, 'independent: psychrolib 1.1.1'],
    ['wet-bulb-quick', 22.2968, 'independent: the fit worked out apart at 30 °C and 50 %'],
    ['sol-air', 30 + 480 / 17, 'hand'],
    ['dew-point', 18.447, 'independent: psychrolib 1.1.1'],
    ['standard-pressure', 89875, 'published [ASHRAE2017]'],
    ['wind-at-height', 20 * 0.05 ** (1 / 7), 'closed form'],
    ['mix-temperature', 31.35, 'hand'],
    ['wbgt-from-air', 29.26, 'independent'],
    ['wbgt-limit', 28.21, 'hand'],
    ['wind-chill', -19.52, 'hand: 13.12 − 6.215 − 11.37·1.7233 − 3.965·1.7233'],
    ['clear-sky-global', 487.894, 'published [Haurwitz1945]'],
    ['air-mass', 1.9943, 'independent, zenith 60°'],
    ['cloud-transmission', 92.894, 'hand: 1 − 0.75·0.5^3.4'],
  ] as const)('%s gives %d (%s)', (name, expected, _origin) =>
    expect(Math.abs(example(name) / expected - 1)).toBeLessThan(4e-4),
  )

  it('take any unit of their dimension', () => {
    const uno = formulas.find(each => each.name === 'evaporation-uno')!
    const read = calculateFormula(uno, {
      concrete: '86 °F',
      air: '86 °F',
      humidity: '50 %',
      wind: '5.5556 m/s',
    })
    expect(read.ok && read.value.value).toBeCloseTo(0.9578, 3)
  })
  it('have names of their own, examples inside their ranges, finite answers and a source', () => {
    expect(new Set(formulas.map(({ name }) => name)).size).toBe(formulas.length)
    for (const { inputs, source, name } of formulas) {
      expect(source).not.toBe('')
      expect(Number.isFinite(example(name))).toBe(true)
      for (const { least = -Infinity, most = Infinity, example: given } of inputs) {
        expect(given).toBeGreaterThanOrEqual(least)
        expect(given).toBeLessThanOrEqual(most)
      }
    }
  })
})
