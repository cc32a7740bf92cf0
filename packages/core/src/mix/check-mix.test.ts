import { describe, expect, it } from 'vitest'
import { checkMixUse, defaultMix } from './index.js'

const tested = {
  ...defaultMix,
  provenance: 'tests.csv',
  testedTo: 5400,
  testedTemperatures: [15, 28],
} as const
const use = { at: 'A1', oldest: 5000, coldest: 16, hottest: 20 }
const checks = (mix: typeof tested, more: object) =>
  checkMixUse(mix, { ...use, ...more }).map(({ check }) => check)

describe('checkMixUse', () => {
  it('finds nothing inside the tests', () => expect(checks(tested, {})).toEqual([]))
  it('warns of the default mix every time', () =>
    expect(checkMixUse(defaultMix, use)).toMatchObject([{ check: 'mix-untested', verdict: 'warn' }]))
  it('says when the foot gets older than any test, counting the heat', () => {
    expect(checks(tested, { oldest: 5500 })).toEqual(['mix-age-untested'])
    expect(checks(tested, { hottest: 28 })).toEqual(['mix-age-untested']) // hand: 5000 s at 28 °C are worth 7870 s
  })
  it('says when the wall is colder or hotter than any test', () => {
    expect(checks(tested, { coldest: 8 })).toEqual(['mix-temperature-untested'])
    expect(checks(tested, { oldest: 10, hottest: 35 })).toEqual(['mix-temperature-untested'])
  })
})
