import { describe, expect, it } from 'vitest'
import { calculateFormula, type Formula, findFormula } from './index.js'

/** Density of an ideal gas, p/(R·T) with R = 287.05 J/(kg·K): known to everyone, and it has an offset unit in it. */
const airDensity: Formula = {
  name: 'air-density',
  says: 'Density of dry air.',
  inputs: [
    { name: 'pressure', unit: 'kPa', meaning: 'air pressure', least: 60, most: 110, example: 101.325 },
    { name: 'air', unit: '°C', meaning: 'air temperature', least: -40, most: 60, example: 15 },
  ],
  output: { name: 'density', unit: 'kg/m³' },
  source: '[ISO2533]',
  calculate: ({ pressure = Number.NaN, air = Number.NaN }) => (pressure * 1000) / (287.05 * (air + 273.15)),
}

const calculate = (given: Record<string, string>) => calculateFormula(airDensity, given)
const codes = (given: Record<string, string>) => {
  const result = calculate(given)
  return result.ok ? [] : result.problems.map(each => each.code)
}

describe('calculateFormula', () => {
  it.each([
    // published: standard atmosphere at sea level, 1.225 kg/m³ (ISO 2533, from memory); tolerance half the last digit
    ['101.325 kPa', '15 °C'],
    ['1013.25 hPa', '59 °F'],
    ['14.6959488 psi', '288.15 K'],
  ])('takes %s and %s in the units of the reader', (pressure, air) => {
    const result = calculate({ pressure, air })
    expect(result.ok && Math.abs(result.value.value - 1.225)).toBeLessThan(0.0005)
  })
  it('warns of an input outside the range of its source and answers all the same', () => {
    const result = calculate({ pressure: '101.325 kPa', air: '80 °C' })
    expect(result.ok && result.value.warnings).toEqual([
      'air is 80 °C, outside the range of the source (-40 … 60 °C): do not rely on it',
    ])
  })
  it('reports every missing, unknown and unreadable input at once', () =>
    expect(codes({ pressur: '1 bar', air: '15' })).toEqual([
      'formula/unknown-input',
      'formula/missing-input',
      'quantity/no-unit',
    ]))
  it('refuses an answer that is not finite', () =>
    expect(codes({ pressure: '1 bar', air: '0 K' })).toEqual(['formula/no-answer']))
})

describe('findFormula', () => {
  it('names the nearest formula for a slip of the finger', () => {
    const result = findFormula([airDensity], 'air-densty')
    expect(result.ok ? '' : result.problems[0]?.say).toContain('did you mean “air-density”?')
  })
})
