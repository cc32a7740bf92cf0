import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ageFactor, defaultMix } from '../mix/index.js'
import type { PrintHour } from '../weather/index.js'
import { intermixingRest, judgeJoint, longestRest, pauseBudget, structurationRest } from './index.js'

const rules = {
  dryingMost: { value: 0.25, source: 'the job' },
  restMost: { value: 5400, source: 'common practice, no source' },
}
const noon = 1_750_000_000 - (1_750_000_000 % 3600)

function hours(evaporation: readonly number[], mixTemperature = 20): PrintHour[] {
  return evaporation.map((value, i) => ({
    start: noon + i * 3600,
    weather: {
      start: noon + i * 3600,
      air: 20,
      humidity: 0.5,
      wind: 2,
      gust: 4,
      rain: 0,
      global: 0,
      beam: 0,
      diffuse: 0,
      pressure: 101_325,
      source: 'normals',
    },
    mixTemperature,
    evaporation: value,
    wbgt: 18,
    sunAltitude: 0.5,
    limits: [],
    open: true,
  }))
}

describe('intermixingRest', () => {
  // [Roussel2018], form from memory; rows computed independently from elementary mechanics, printed to 0.1 s.
  it.each([
    [0.02, 0.1, 20, 1, 238.7],
    [0.02, 0.05, 50, 0.5, 563.8],
    [0.04, 0.1, 20, 0.2, 1395.3],
    [0.01, 0.1, 50, 0.5, 2004],
  ])(
    'h %d m, V %d m/s, µ %d Pa·s, Athix %d Pa/s',
    (layerHeight, speed, plasticViscosity, structuration, expected) =>
      expect(
        Math.abs(
          intermixingRest({ density: 2300, layerHeight, speed, plasticViscosity, structuration }) - expected,
        ),
      ).toBeLessThan(0.5),
  )
  it('has no end for a mix without structuration', () =>
    expect(intermixingRest({ ...defaultMix, layerHeight: 0.02, speed: 0.1, structuration: 0 })).toBe(
      Infinity,
    ))
})

describe('longestRest', () => {
  it('takes the mix’s own rest from a caller who has worked it out', () => {
    const options = { layerHeight: 0.02, speed: 0.1 }
    const stiffened = structurationRest(defaultMix, 0.02, 0.1)
    const asked = (more: object) =>
      longestRest(noon, defaultMix, hours([0, 0]), rules, { ...options, ...more })
    expect(asked({ stiffened })).toEqual(asked({}))
    // At the reference temperature an equivalent second is a second.
    const short = hours([0, 0], defaultMix.reference)
    const rest = longestRest(noon, defaultMix, short, rules, {
      stiffened: { seconds: 600, source: 'a test' },
    })
    expect(rest.seconds).toBeCloseTo(600, 6)
  })
  it('without drying is the structuration rest, quicker where the mix is warmer', () => {
    const at30 = longestRest(noon, defaultMix, hours([0, 0, 0], 30), rules)
    expect(at30.cause).toBe('structuration')
    // closed form: the equivalent rest divided by the age factor
    expect(at30.seconds).toBeCloseTo(structurationRest(defaultMix).seconds / ageFactor(30, defaultMix), 6)
  })
  it('without a bond test follows the batch that stiffens quickest, not the best estimate', () => {
    const grown = (rate: number) => ({ kind: 'linear', start: 1000, rate }) as const
    const { upper: _, ...open } = defaultMix
    const mix = {
      ...open,
      fitted: { ...defaultMix.fitted, yield: grown(0.5) },
      lower: { ...defaultMix.lower, yield: grown(0.25) },
      plasticViscosity: 1e-3,
    }
    // hand: 1000 Pa double in 2000 s at 0.5 Pa/s, in 1000 s at 1 Pa/s
    expect(structurationRest(mix).seconds).toBeCloseTo(2000, 6)
    expect(structurationRest({ ...mix, upper: { yield: grown(1) } }).seconds).toBeCloseTo(1000, 6)
  })
  it('in strong drying ends when the evaporated water reaches the tested limit', () => {
    const dry = longestRest(noon, defaultMix, hours([1, 1]), rules)
    expect(dry.cause).toBe('drying')
    expect(dry.seconds).toBeCloseTo(900, 6) // hand: 0.25 kg/m² at 1 kg/m²h
    expect(dry.limit).toMatchObject({ kind: 'resting-time', source: 'the job', unit: 's' })
  })
  it('adds up hours of different drying', () => {
    // hand: from 12:50, 600 s at 0.6 → 0.1 kg/m²; the other 0.15 kg/m² at 0.9 → 600 s
    const rest = longestRest(noon + 3000, defaultMix, hours([0.6, 0.9]), rules)
    expect(rest.seconds).toBeCloseTo(1200, 6)
    expect(rest.evaporated).toBeCloseTo(0.25, 9)
  })
  it('never exceeds the rule of the job, even for a mix that never stiffens', () => {
    const yieldGrowth = { kind: 'linear', start: 500, rate: 0 } as const
    const { fitted, lower } = defaultMix
    const { upper: _, ...open } = defaultMix
    const never = {
      ...open,
      fitted: { ...fitted, yield: yieldGrowth },
      lower: { ...lower, yield: yieldGrowth },
    }
    const rest = longestRest(noon, never, hours([0]), rules)
    expect(rest).toMatchObject({ cause: 'rest-rule', seconds: 5400 })
  })
  it('follows the site bond test where there is one', () => {
    const tested = { ...defaultMix, bondTest: { rest: 600, source: 'bond test of 3 June' } }
    const rest = longestRest(noon, tested, hours([0]), rules)
    expect(rest.seconds).toBeCloseTo(600, 9)
    expect(rest.limit.source).toBe('bond test of 3 June')
  })
  it('counts the chilled mix when the chiller is at work', () => {
    const chilled = hours([0, 0], 30).map(hour => ({ ...hour, mixTemperatureChilled: 20 }))
    expect(longestRest(noon, defaultMix, chilled, rules, { chilled: true }).seconds).toBeGreaterThan(
      1.5 * longestRest(noon, defaultMix, chilled, rules).seconds,
    )
  })
  it('shortens with more drying and with a warmer mix (trend of published bond tests)', () => {
    const draws = fc.tuple(
      fc.double({ min: 0, max: 2, noNaN: true }),
      fc.double({ min: 5, max: 38, noNaN: true }),
      fc.integer({ min: 0, max: 7000 }),
    )
    fc.assert(
      fc.property(draws, ([evaporation, temperature, later]) => {
        const rest = (e: number, t: number) =>
          longestRest(noon + later, defaultMix, hours([e, e, e], t), rules).seconds
        const here = rest(evaporation, temperature)
        expect(rest(evaporation + 0.2, temperature)).toBeLessThanOrEqual(here + 1e-6)
        expect(rest(evaporation, temperature + 2)).toBeLessThanOrEqual(here + 1e-6)
      }),
    )
  })
  it('is a bug where an hour does not know its evaporation', () =>
    expect(() => longestRest(noon, defaultMix, hours([Number.NaN]), rules)).toThrow('evaporation'))
})

describe('judgeJoint', () => {
  const longest = longestRest(noon, defaultMix, hours([1, 1]), rules)
  it('within the rest is sound, with the rest of the budget left', () => {
    expect(judgeJoint(600, longest, defaultMix, 600).state).toBe('sound')
    expect(pauseBudget(600, longest)).toBeCloseTo(300, 6)
  })
  it('with only a dry skin is wetted', () =>
    expect(judgeJoint(1200, longest, defaultMix, 1200).treatments).toEqual(['wet']))
  it('that has stiffened too is keyed as well', () =>
    expect(judgeJoint(4000, longest, defaultMix, 4000).treatments).toEqual(['key', 'wet']))
  it('on hardened material takes a bonding coat', () => {
    expect(judgeJoint(40_000, longest, defaultMix, 40_000).treatments).toContain('bonding-coat')
    expect(pauseBudget(40_000, longest)).toBe(0)
  })
})
