import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  ageAtStrength,
  ageAtYield,
  ageFactor,
  defaultMix,
  momentOfAge,
  stiffness,
  strengthAt,
  temperatureOfFactor,
  type YieldGrowth,
  yieldRate,
  yieldStress,
} from './index.js'

const perrot: YieldGrowth = { kind: 'exponential', start: 1000, rate: 0.5, time: 3600 }
const roussel: YieldGrowth = { kind: 'linear', start: 1000, rate: 0.5 }
const kruger: YieldGrowth = { kind: 'bilinear', start: 1000, earlyRate: 6, kneeAge: 200, lateRate: 0.6 }

describe('yieldStress', () => {
  // Rows of the two laws side by side, computed independently from the published forms; printed to 0.001 Pa.
  it.each([
    [600, 1326.449, 1300],
    [3600, 4092.907, 2800],
    [7200, 12500.301, 4600],
  ])('at %d s grows as the exponential and the linear law say (independent)', (age, exponential, linear) => {
    expect(yieldStress(perrot, age)).toBeCloseTo(exponential, 3)
    expect(yieldStress(roussel, age)).toBe(linear)
  })

  it('bends at the knee of the bilinear law', () => {
    // hand: 1000 + 6·200 = 2200; 100 s later + 0.6·100 = 2260
    expect(yieldStress(kruger, 200)).toBe(2200)
    expect(yieldStress(kruger, 300)).toBeCloseTo(2260, 9)
  })

  it('is linear in the limit of a long exponential time', () =>
    // expm1 keeps the limit exact to rounding; the remainder is A·t²/(2·tc) = 0.0009 Pa here.
    expect(yieldStress({ ...perrot, time: 1e9 }, 1900)).toBeCloseTo(yieldStress(roussel, 1900), 2))

  it.each([
    ['linear', roussel],
    ['bilinear', kruger],
    ['exponential', perrot],
  ] as const)('of kind %s is undone by the age at a stress, and its rate is its slope', (_, growth) => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 20_000, noNaN: true }), age => {
        expect(ageAtYield(growth, yieldStress(growth, age))! / age).toBeCloseTo(1, 9)
        if (Math.abs(age - 200) < 1) return
        const slope = (yieldStress(growth, age + 0.01) - yieldStress(growth, age - 0.01)) / 0.02
        expect(yieldRate(growth, age) / slope).toBeCloseTo(1, 4)
      }),
    )
  })

  it('that never grows never reaches a higher stress', () =>
    expect(ageAtYield({ kind: 'linear', start: 900, rate: 0 }, 1000)).toBeUndefined())

  it.each([-1, Number.NaN, Infinity])('has no value at age %d', age =>
    expect(() => yieldStress(roussel, age)).toThrow('age'),
  )
})

describe('stiffness', () => {
  // [Wolfs2018], constants read second-hand: E = 0.0781 + 0.0012·t MPa, t in minutes; printed to 0.1 kPa.
  const published = { start: 78_100, rate: 1200 / 60, bend: 0 }
  it.each([
    [0, 78_100],
    [15, 96_100],
    [30, 114_100],
    [60, 150_100],
    [90, 186_100],
  ])('of the published mortar at %d min', (minutes, expected) =>
    expect(stiffness(published, minutes * 60)).toBeCloseTo(expected, 6),
  )
  it('takes a square term', () => expect(stiffness({ start: 1, rate: 2, bend: 3 }, 2)).toBe(17))
})

describe('ageFactor', () => {
  // Independent: the Arrhenius sum worked out in double precision; printed to four decimals.
  it.each([
    [0, 0.2868, 0.2413],
    [5, 0.3986, 0.3354],
    [10, 0.5475, 0.4606],
    [15, 0.7438, 0.6258],
    [20, 1, 0.8413],
    [30, 1.7553, 1.4768],
    [40, 2.9723, 2.5006],
    [50, 4.8716, 4.0986],
  ])('at %d °C, referred to 20 and to 23 °C', (temperature, to20, to23) => {
    expect(Math.abs(ageFactor(temperature, { activation: 5000, reference: 20 }) - to20)).toBeLessThan(6e-5)
    expect(Math.abs(ageFactor(temperature, { activation: 5000, reference: 23 }) - to23)).toBeLessThan(6e-5)
  })
  it('is one at the reference, whatever the activation', () =>
    expect(ageFactor(23, { activation: 4000, reference: 23 })).toBe(1))
  it('is undone by the temperature of a factor', () =>
    expect(temperatureOfFactor(ageFactor(34, defaultMix), defaultMix)).toBeCloseTo(34, 9))
  it('is a bug without a temperature', () =>
    expect(() => ageFactor(Number.NaN, defaultMix)).toThrow('temperature'))
})

describe('momentOfAge', () => {
  it('at the reference temperature is the age itself', () =>
    expect(momentOfAge(1000, 5000, () => 20, defaultMix)).toBeCloseTo(6000, 6))
  it('follows a day that warms: the sum of two steady stretches', () => {
    // hand: 3600 s at 20 °C are worth 3600 s; the other 3600 s of age take 3600 / 1.7553 = 2050.9 s at 30 °C.
    const warming = (at: number) => (at < 3600 ? 20 : 30)
    expect(momentOfAge(0, 7200, warming, defaultMix)).toBeCloseTo(3600 + 3600 / 1.75526, 1)
  })
  it('is none beyond the horizon', () =>
    expect(momentOfAge(0, 7200, () => 20, defaultMix, 3600)).toBeUndefined())
})

describe('strengthAt', () => {
  // Independent arithmetic of the hyperbola: Su 40 MPa, k 0.5 per day, t0 0.3 d; printed to 1 kPa.
  const growth = { ultimate: 40e6, rateConstant: 0.5 / 86_400, start: 0.3 * 86_400 }
  it.each([
    [1, 10.37],
    [3, 22.979],
    [7, 30.805],
    [28, 37.306],
  ])('at %d d is %d MPa', (days, megapascals) =>
    expect(Math.abs(strengthAt(growth, days * 86_400) / 1e6 - megapascals)).toBeLessThan(6e-4),
  )
  it('is half the ultimate one time constant after its start (closed form)', () =>
    expect(strengthAt(growth, growth.start + 1 / growth.rateConstant)).toBeCloseTo(20e6, 3))
  it('is nothing before its start', () => expect(strengthAt(growth, 3600)).toBe(0))
  it('is undone by the age at a strength, and never reaches the ultimate', () => {
    expect(strengthAt(growth, ageAtStrength(growth, 3.5e6)!)).toBeCloseTo(3.5e6, 3)
    expect(ageAtStrength(growth, 40e6)).toBeUndefined()
  })
})

describe('defaultMix', () => {
  it('says that it is a default, and where its values come from', () => {
    expect(defaultMix.provenance).toBe('default')
    expect(Object.keys(defaultMix.sources!)).toContain('yield')
  })
  it('is as strong as the published mortar behind it', () => {
    // published [Wolfs2018]: uniaxial strength 19.214 kPa at 90 min = √3 · yield stress
    expect(yieldStress(defaultMix.fitted.yield, 5400) * Math.sqrt(3)).toBeCloseTo(19_214, 6)
  })
  it('plans below its best estimate at every age', () => {
    for (const age of [0, 60, 3600, defaultMix.testedTo]) {
      expect(yieldStress(defaultMix.lower.yield, age)).toBeLessThan(yieldStress(defaultMix.fitted.yield, age))
      expect(stiffness(defaultMix.lower.stiffness, age)).toBeLessThan(
        stiffness(defaultMix.fitted.stiffness, age),
      )
    }
  })
  it('keeps the shape of a first layer 40 mm high', () =>
    // [Roussel2018] ρ·g·h/√3 = 487 Pa for 40 mm at 2150 kg/m³
    expect(defaultMix.lower.yield.start).toBeGreaterThan((2150 * 9.81 * 0.04) / Math.sqrt(3)))
})
