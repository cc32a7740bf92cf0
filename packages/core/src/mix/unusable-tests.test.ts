import { describe, expect, it } from 'vitest'
import { foreignUnits } from '../../../../tests/foreign-units.js'
import { uniformFrom } from '../numeric/index.js'
import { defaultMix, fitMix, type MixTest } from './index.js'

const random = (seed = 7) => uniformFrom(seed)
const options = { name: 'site mortar', provenance: 'tests.csv', replicates: 200 }
const codes = (tests: readonly MixTest[]): string[] => {
  const fit = fitMix(tests, { ...options, random: random() })
  return fit.ok ? [] : fit.problems.map(({ code }) => code)
}

describe('tests that cannot be used', () => {
  const vane = (minutes: number, stress: number, more: object = {}): MixTest =>
    ({ kind: 'vane', at: `m${minutes}`, age: minutes * 60, temperature: 20, stress, ...more }) as MixTest
  const good = [vane(5, 1000), vane(30, 2000), vane(60, 3000)]

  it.each([
    ['a single point', [vane(5, 1000)], 'mix/too-few-tests'],
    ['three points at one age', [vane(5, 1000), vane(5, 1010), vane(5, 990)], 'mix/too-few-tests'],
    ['no test at all', [], 'mix/too-few-tests'],
    ['a negative age', [...good, vane(-3, 900)], 'mix/implausible-age'],
    ['an age that is no number', [...good, vane(Number.NaN, 900)], 'mix/implausible-age'],
    ['a mix that never stiffens', [vane(5, 1000), vane(30, 1010), vane(60, 1005)], 'mix/never-stiffens'],
    ['a mix that softens', [vane(5, 1500), vane(30, 1200), vane(60, 1100)], 'mix/never-stiffens'],
    ['kPa among Pa', [...good, vane(31, 2.1)], 'mix/mixed-units'],
    ['kPa among Pa, twenty minutes from the next', [...good, vane(45, 2.5)], 'mix/mixed-units'],
    ['kPa at the end of Pa', [vane(5, 1000), vane(30, 2000), vane(60, 3)], 'mix/mixed-units'],
    ['a temperature in °F', [...good, vane(40, 2300, { temperature: 90 })], 'mix/implausible-temperature'],
  ])('%s', (_, tests, code) => expect(codes(tests)).toContain(code))

  const press = (minutes: number, stiff: number): MixTest => ({
    kind: 'compression',
    at: `p${minutes}`,
    age: minutes * 60,
    temperature: 20,
    stiffness: stiff,
  })
  it.each([
    ['zero', 0],
    ['no number', Number.NaN],
    ['infinite', Infinity],
  ])('a stiffness of %s', (_, value) =>
    expect(codes([...good, press(30, value)])).toContain('mix/implausible-stiffness'),
  )

  it('a pair of tests in two units is told once, a mix that leaps as it sets is not', () => {
    const fit = fitMix([...good, vane(30.5, 2.1)], { ...options, random: random() })
    expect(fit.ok ? [] : fit.problems.map(({ code }) => code)).toEqual(['mix/mixed-units'])
    if (!fit.ok) expect(fit.problems[0]!.say).toContain('2.1 Pa at 30.5 min, the one beside it')
    // ninetyfold in half an hour, and on: nothing is in another unit
    expect(codes([vane(5, 100), vane(30, 9000), vane(60, 60_000)])).not.toContain('mix/mixed-units')
  })
  it('a stiffness that contradicts the strength beside it, and one that falls from test to test', () => {
    const pressed = (minutes: number, strength: number, stiff: number): MixTest => ({
      kind: 'compression',
      at: `c${minutes}`,
      age: minutes * 60,
      temperature: 20,
      strength,
      stiffness: stiff,
    })
    expect(codes([...good, pressed(30, 4200, 340e6)])).toEqual(['mix/stiffness-contradicts'])
    expect(codes([...good, pressed(30, 4200, 6000)])).toEqual(['mix/stiffness-contradicts'])
    const falling = [pressed(30, 4200, 6e5), pressed(60, 8100, 3e5), pressed(90, 14_500, 1e5)]
    expect(codes([...good, ...falling])).toEqual(['mix/stiffness-falls'])
    expect(codes([...good, ...falling.slice(0, 2)])).not.toContain('mix/stiffness-falls')
  })
  it('are told as they are written, in the job’s units', () => {
    const said = (units: 'metric' | 'imperial') => {
      const fit = fitMix([...good, vane(-5, 0.2, { temperature: 90 })], {
        ...options,
        units,
        random: random(),
      })
      return fit.ok ? [] : fit.problems.map(({ say }) => say)
    }
    expect(said('metric')).toEqual([
      'The age of this vane test is -5 min; between 0 min and 400 days can be used. Check the number and its unit.',
      'The temperature of this vane test is 90 °C; between -10 °C and 80 °C can be used. Check the number and its unit.',
      'The stress of this vane test is 0.2 Pa; between 1 Pa and 2 MPa can be used. Check the number and its unit.',
    ])
    expect(said('imperial').flatMap(each => foreignUnits(each, 'imperial'))).toEqual([])
  })

  it('one stiffness and one yield test are both reported', () =>
    expect(codes([vane(5, 1000), press(10, 1e5)])).toEqual(['mix/too-few-tests', 'mix/too-few-tests']))

  it('a test left out that is not there', () => {
    const fit = fitMix(good, { ...options, random: random(), leaveOut: ['m99'] })
    expect(fit).toMatchObject({ ok: false, problems: [{ code: 'mix/unknown-test', at: 'm99' }] })
  })

  it('densities that contradict are reported with both numbers', () => {
    const dense = (density: number): MixTest => ({
      kind: 'density',
      at: `d${density}`,
      age: 0,
      temperature: 20,
      density,
    })
    const fit = fitMix([...good, dense(2150), dense(1800)], { ...options, random: random() })
    expect(fit).toMatchObject({ ok: false, problems: [{ code: 'mix/density-contradicts' }] })
    if (!fit.ok) expect(fit.problems[0]!.say).toContain('1800 kg/m³ and 2150 kg/m³')
    // Hand: 1 lb/ft³ = 16.01846 kg/m³.
    const inPounds = fitMix([...good, dense(2150), dense(1800)], { ...options, units: 'imperial' })
    expect(inPounds.ok).toBe(false)
    if (!inPounds.ok) expect(inPounds.problems[0]!.say).toContain('112.4 lb/ft³ and 134.2 lb/ft³')
  })
  it('a pat that hardly spread', () => {
    const pat: MixTest = { kind: 'spread', at: 's', age: 300, temperature: 20, diameter: 0.1, volume: 3.4e-4 }
    expect(codes([...good, pat])).toEqual(['mix/spread-too-stiff'])
  })
  it('all problems come at once', () =>
    expect(codes([vane(-1, 100), vane(5, -4), press(3, 0)])).toHaveLength(3))
  it('the default mix stands in for what is not tested', () =>
    expect(fitMix(good, { ...options, random: random() })).toMatchObject({
      value: { mix: { strength: defaultMix.strength } },
    }))
})
