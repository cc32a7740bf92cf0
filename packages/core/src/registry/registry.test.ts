import { describe, expect, it } from 'vitest'
import { calculateFormula } from '../formula/index.js'
import { allFormulas } from './index.js'

const examplesOf = (formula: (typeof allFormulas)[number]) =>
  Object.fromEntries(formula.inputs.map(input => [input.name, `${input.example} ${input.unit}`.trim()]))

describe('the formula registry', () => {
  it('has one formula a name', () => {
    const names = allFormulas.map(formula => formula.name)
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([])
  })

  it.each(allFormulas)(
    '$name answers its own examples with a number, within its ranges, from a source',
    formula => {
      const answer = calculateFormula(formula, examplesOf(formula))
      expect(answer.ok ? answer.value.warnings : answer.problems).toEqual([])
      expect(answer.ok && Number.isFinite(answer.value.value)).toBe(true)
      expect(formula.source).toMatch(/\[[A-Z]|closed form|mass balance|common practice|our/i)
    },
  )
})
