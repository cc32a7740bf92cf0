import { describe, expect, it } from 'vitest'
import { ageFactor, cutWindow, defaultMix, fitCutTrials, type MixModel, upperYield } from './index.js'

/** Hand-made: no doubt, 1 kPa + 1 Pa/s, so that a stress of x kPa belongs to the age (x − 1) · 1000 s. */
const growth = { kind: 'linear', start: 1000, rate: 1 } as const
const sharp: MixModel = {
  ...defaultMix,
  fitted: { ...defaultMix.fitted, yield: growth },
  lower: { ...defaultMix.lower, yield: growth },
  upper: { yield: growth },
  cutFrom: 4000,
  cutUntil: 11_000,
}

describe('cutWindow', () => {
  it('lies between the ages of its two stresses at the reference temperature', () =>
    // hand: 4 kPa after 3000 s, 11 kPa after 10 000 s
    expect(cutWindow(500, () => 20, sharp)).toEqual({ from: 3500, until: 10_500, sure: true }))

  it('opens and closes sooner in a warm wall', () => {
    const warm = cutWindow(0, () => 30, sharp)!
    expect(warm.from).toBeCloseTo(3000 / ageFactor(30, sharp), 6)
    expect(warm.until).toBeCloseTo(10_000 / ageFactor(30, sharp), 6)
  })

  it('waits for the slow edge of the band and ends with the quick edge', () => {
    const window = cutWindow(0, () => 20, defaultMix)!
    // hand: lower 2245.7 + 0.9194·t = 5000 → 2996 s; upper 5315.2 + 2.1762·t = 30 000 → 11 343 s
    expect(window.from).toBeCloseTo(2996, -1)
    expect(window.until).toBeCloseTo(11_343, -1)
  })

  it('mirrors the lower band where the model has no upper one, also for a growth the job wrote itself', () => {
    const { upper: _, ...mix } = sharp
    const halved = { ...mix, lower: { ...mix.lower, yield: { ...growth, start: 500, rate: 0.5 } } }
    // hand: lower 500 + 0.5·t = 4000 → 7000 s; upper 2000 + 2·t = 11 000 → 4500 s: crossed, so the best estimate stands
    expect(cutWindow(0, () => 20, halved)).toEqual({ from: 3000, until: 10_000, sure: false })
    expect(upperYield(halved)).toEqual({ kind: 'linear', start: 2000, rate: 2 })
  })

  it('is unsure where the band leaves nothing between its edges', () => {
    const doubtful = {
      ...sharp,
      lower: { ...sharp.lower, yield: { ...growth, rate: 0.2 } },
      upper: { yield: { ...growth, rate: 2 } },
    }
    expect(cutWindow(0, () => 20, doubtful)).toEqual({ from: 3000, until: 10_000, sure: false })
  })

  it('never reaches past the tested age', () =>
    expect(cutWindow(0, () => 20, { ...sharp, testedTo: 6000 })!.until).toBe(6000))

  it('of a mix that does not stiffen does not exist', () => {
    const limp = { ...growth, rate: 0 }
    const mix = { ...sharp, fitted: { ...sharp.fitted, yield: limp }, lower: { ...sharp.lower, yield: limp } }
    expect(cutWindow(0, () => 20, mix)).toBeUndefined()
  })
})

describe('fitCutTrials', () => {
  it('takes the softest clean cut above the slumped and the stiffest clean one below the stiff', () => {
    const limits = fitCutTrials(
      [
        { age: 1000, outcome: 'slumped' },
        { age: 2000, outcome: 'clean' },
        { age: 7000, outcome: 'clean' },
        { age: 9000, outcome: 'too-stiff' },
      ],
      growth,
      defaultMix,
    )
    // hand: 1000 Pa + age · 1 Pa/s
    expect(limits).toMatchObject({ ok: true, value: { cutFrom: 3000, cutUntil: 8000 } })
  })
  it('keeps the side no trial reached', () =>
    expect(fitCutTrials([{ age: 8000, outcome: 'clean' }], growth, defaultMix)).toMatchObject({
      value: { cutFrom: defaultMix.cutFrom, cutUntil: defaultMix.cutUntil },
    }))
  it('contradicting trials are a problem with both stresses in it', () => {
    const limits = fitCutTrials(
      [
        { age: 5000, outcome: 'slumped' },
        { age: 2000, outcome: 'clean' },
      ],
      growth,
      defaultMix,
    )
    expect(limits).toMatchObject({ ok: false, problems: [{ code: 'mix/no-clean-cut' }] })
    if (!limits.ok) expect(limits.problems[0]!.say).toContain('6.0 kPa')
  })
})
