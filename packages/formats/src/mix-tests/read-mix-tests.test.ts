import { readFileSync } from 'node:fs'
import { fitMix } from '@dawnlift/core/mix'
import { describe, expect, it } from 'vitest'
import { readMixTests } from './index.js'

const read = (text: string) => {
  const result = readMixTests(text, 'site.csv')
  if (!result.ok) throw new Error(result.problems.map(({ say }) => say).join('\n'))
  return result.value
}
const problems = (text: string) => {
  const result = readMixTests(text, 'site.csv')
  return result.ok ? [] : result.problems
}

describe('readMixTests', () => {
  it('takes units from the heads', () =>
    expect(read('kind,age_min,temperature_C,stress_kPa\nvane,15,22.5,1.4\n')).toEqual([
      { kind: 'vane', at: 'site.csv:2', age: 900, temperature: 22.5, stress: 1400 },
    ]))

  it('takes units from brackets, from a unit column and from the cells', () => {
    const sheet = [
      'Test;Age;Temperature [F];Value;Unit;Note',
      'vane;15 min;68;1,4;kPa;first batch',
      'cylinder;7 d;77;28;MPa;',
      'density;2 min;68;134;lb/ft³;weighed',
    ]
    const tests = read(sheet.join('\r\n'))
    expect(tests[0]).toMatchObject({ kind: 'vane', age: 900, stress: 1400 })
    expect(tests[0]!.temperature).toBeCloseTo(20, 9)
    expect(tests[1]).toMatchObject({ kind: 'cylinder', age: 7 * 86_400, strength: 28e6 })
    // published: 1 lb/ft³ = 16.01846 kg/m³
    expect(tests[2]).toMatchObject({ kind: 'density' })
    expect((tests[2] as { density: number }).density).toBeCloseTo(134 * 16.01846, 2)
  })

  it('reads every kind with its own columns', () => {
    const sheet = `# poured on the test pad
kind,age_min,temperature_C,value,unit,volume_mL,strength_kPa,stiffness_kPa
spread,10,20,180,mm,344,,
penetrometer,40,20,6500,Pa,,,
compression,60,21,,,,15.2,900
compression,75,21,,,,,1150
set,240,20,2.1,MPa,,,
cube,40320,20,45,MPa,,,`
    expect(read(sheet)).toMatchObject([
      { kind: 'spread', diameter: 0.18, volume: expect.closeTo(344e-6, 12) },
      { kind: 'penetrometer', stress: 6500 },
      { kind: 'compression', strength: 15_200, stiffness: 900_000 },
      { kind: 'compression', stiffness: 1_150_000 },
      { kind: 'set', resistance: 2.1e6, at: 'site.csv:7' },
      { kind: 'cube', strength: 45e6 },
    ])
  })

  it('reads quoted cells, a byte order mark and tabs', () => {
    const sheet =
      '\uFEFFkind\tage_min\ttemperature_C\tstress_Pa\tnote\nvane\t5\t20\t900\t"a ""wet"" one\tstill"'
    expect(read(sheet)).toHaveLength(1)
  })

  it('reports every problem with its line', () => {
    const found = problems(
      'kind,age_min,temperature_C,stress_Pa,strength_MPa\nvanne,5,20,900,\nvane,x,20,,\nvane,7,20,900,3\n',
    )
    expect(found.map(({ code, at }) => [code, at])).toEqual([
      ['mix-tests/unknown-kind', 'site.csv:2'],
      ['quantity/not-a-number', 'site.csv:3'],
      ['mix-tests/missing-value', 'site.csv:3'],
      ['mix-tests/stray-value', 'site.csv:4'],
    ])
    expect(found[0]!.say).toContain('“vane”')
  })

  it.each([
    ['a number without a unit', 'kind,age,temperature_C,stress_Pa\nvane,5,20,900', 'quantity/no-unit'],
    [
      'two columns for one quantity',
      'kind,age_min,age_h,temperature_C,stress_Pa\nvane,5,0.1,20,900',
      'mix-tests/doubled-column',
    ],
    [
      'a cell in another unit than its head',
      'kind,age_min,temperature_C,stress_Pa\nvane,5,20,1.2 kPa',
      'mix-tests/mixed-units',
    ],
    [
      'a unit of another quantity',
      'kind,age_min,temperature_C,value,unit\nvane,5,20,9,mm',
      'quantity/unknown-unit',
    ],
    ['a missing column', 'kind,age_min,stress_Pa\nvane,5,900', 'mix-tests/missing-column'],
    ['an unknown column', 'kind,age_min,temperature_C,stres_Pa\nvane,5,20,900', 'mix-tests/unknown-column'],
    ['an empty file', '\n\n', 'mix-tests/empty'],
    ['heads alone', 'kind,age_min,temperature_C,stress_Pa', 'mix-tests/empty'],
  ])('%s is a problem', (_, sheet, code) =>
    expect(problems(sheet).map(problem => problem.code)).toContain(code),
  )

  it('a comma that could separate thousands is asked about', () =>
    expect(problems('kind;age_min;temperature_C;stress_Pa\nvane;5;20;1,500')[0]!.say).toContain('1500'))
})

describe('the sheet shown in the guide', () => {
  const guide = readFileSync(new URL('../../../../docs/guide/mix-tests.md', import.meta.url), 'utf8')
  const sheet = /```csv\n(.*?)```/s.exec(guide)![1]!

  it('is read and can be fitted', () => {
    const tests = read(sheet)
    expect(tests).toHaveLength(13)
    const fit = fitMix(tests, { name: 'guide', provenance: 'guide', random: () => 0.5, replicates: 5 })
    expect(fit.ok).toBe(true)
    if (fit.ok) expect(fit.value.setting!.initial).toBeLessThan(fit.value.setting!.final)
  })
})
