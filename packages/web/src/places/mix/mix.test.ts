import { readMixTests } from '@dawnlift/formats/mix-tests'
import { describe, expect, it } from 'vitest'
import { ticks } from './chart-frame.js'
import { lineOfTest, testsFileOf, testsLeftOut, withoutTest, withTestAgain, withTests } from './tests-edit.js'
import { waterText } from './water-text.js'

describe('tests pasted into the job', () => {
  it('go into the file the job names', () => {
    const kept = withTests('mix:\n  tests: june.csv\n', { mix: { tests: 'june.csv' } })
    expect(kept).toEqual({ ok: true, value: { document: 'mix:\n  tests: june.csv\n', file: 'june.csv' } })
  })
  it('take the place of the default mix', () => {
    const kept = withTests('name: Shed\nmix: default # for now\n', { mix: 'default' })
    expect(kept.ok && kept.value.document).toMatch(/mix:[\s\S]*tests: mix-tests\.csv/)
    expect(testsFileOf({ mix: 'default' })).toBeUndefined()
  })
  it('leave what the job knows of its mix', () => {
    const kept = withTests('mix:\n  bag: 25 kg\n', { mix: { bag: '25 kg' } })
    expect(kept.ok && kept.value.document).toMatch(/bag: 25 kg[\s\S]*tests: mix-tests\.csv/)
  })
})

describe('a test left out', () => {
  const text = 'kind,age_min,temperature_C,stress_kPa\nvane,15,22,1.4\nvane,30,22,9\n'
  const counted = (of: string) => {
    const read = readMixTests(of, 'mix-tests.csv')
    return read.ok ? read.value.map(each => each.at) : read.problems
  }
  it('is not counted any more, and the others keep their lines', () =>
    expect(counted(withoutTest(text, lineOfTest('mix-tests.csv:2')))).toEqual(['mix-tests.csv:3']))
  it('can be read where it stood, and counted again', () => {
    const without = withoutTest(text, 3)
    expect(testsLeftOut(without)).toEqual([{ line: 3, test: 'vane,30,22,9' }])
    expect(withTestAgain(without, 3)).toBe(text)
  })
  it('is never the line of the heads', () => expect(withoutTest(text, 1)).toBe(text))
})

describe('marks of an axis', () => {
  it.each([
    [0, 52, 5, [0, 20, 40]],
    [15, 35, 4, [15, 20, 25, 30, 35]],
    [-0.2, 0.2, 2, [-0.2, 0, 0.2]],
  ])('from %d to %d are round', (from, to, wanted, marks) => {
    const found = ticks({ from, to }, wanted)
    expect(found.map(mark => Number(mark.toFixed(6)) + 0)).toEqual(marks)
  })
})

describe('the water a mix needs', () => {
  const degrees = (value: number) => `${value} °C`
  it('cannot be colder than ice', () => expect(waterText(-3, degrees)).toBe('colder than ice'))
  it('is said as it is above that', () => expect(waterText(12, degrees)).toBe('12 °C'))
})
