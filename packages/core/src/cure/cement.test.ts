import { describe, expect, it } from 'vitest'
import { activationOfCement, binderHeat, cementHeat, hydrationOfCement } from './index.js'

/** Invented Type I. */
const cement = {
  c3s: 0.55,
  c2s: 0.18,
  c3a: 0.1,
  c4af: 0.08,
  sulphate: 0.03,
  freeLime: 0.01,
  magnesia: 0.02,
  fineness: 350,
}
const plain = { cement: 1, slag: 0, flyAsh: 0, ashLime: 0, silicaFume: 0 }

describe('cementHeat', () => {
  it('adds up its compounds', () =>
    // hand: 275 + 46.8 + 86.6 + 33.6 + 18.72 + 11.86 + 17 = 489.58 J/g.
    expect(cementHeat(cement) / 1000).toBeCloseTo(489.58, 6))
  it.each([
    // independent: heat of complete hydration of each pure compound as textbooks round it, from memory, 5 %
    // (C3S 500, C2S 260, C3A 870, C4AF 420 J/g; free lime 1160 J/g by its heat of slaking, 65 kJ/mol over 56.08 g/mol).
    ['c3s', 500],
    ['c2s', 260],
    ['c3a', 870],
    ['c4af', 420],
    ['freeLime', 1160],
  ] as const)('of pure %s is near %d J/g', (compound, heat) => {
    const nothing = { c3s: 0, c2s: 0, c3a: 0, c4af: 0, sulphate: 0, freeLime: 0, magnesia: 0, fineness: 350 }
    expect(cementHeat(nothing)).toBe(0)
    expect(Math.abs(cementHeat({ ...nothing, [compound]: 1 }) / 1000 / heat - 1)).toBeLessThan(0.05)
  })
  it('falls with slag and rises with nothing but lime in the ash', () => {
    expect(binderHeat(cement, { ...plain, cement: 0.5, slag: 0.5 }) / 1000).toBeCloseTo(
      0.5 * 489.58 + 230.5,
      6,
    )
    expect(binderHeat(cement, { ...plain, cement: 0.7, flyAsh: 0.3, ashLime: 0.1 }) / 1000).toBeCloseTo(
      0.7 * 489.58 + 54,
      6,
    )
  })
  it('takes silica fume at 300 J/g, within a hundredth of what 330 would give', () => {
    const heat = binderHeat(cement, { ...plain, cement: 0.9, silicaFume: 0.1 }) / 1000
    // hand: 0.9 · 489.58 + 0.1 · 300 = 470.622 J/g; with 330 it is 473.622.
    expect(heat).toBeCloseTo(470.622, 6)
    expect(473.622 / heat - 1).toBeLessThan(0.01)
  })
})

describe('hydrationOfCement', () => {
  // independent: the regressions computed apart, print rounding; typical values are the study's.
  it('has the computed time, slope and activation of a Type I', () => {
    const curve = hydrationOfCement(cement, plain, 0.45)
    expect(curve.time / 3600).toBeCloseTo(15.55, 2)
    expect(curve.slope).toBeCloseTo(0.696, 3)
    expect(curve.ultimate).toBeCloseTo(0.7204, 4)
    expect((activationOfCement(cement) * 8.314) / 1000).toBeCloseTo(45.77, 2)
  })
  it('slows and flattens with slag, and never hydrates more than all', () => {
    const curve = hydrationOfCement(cement, { ...plain, cement: 0.3, slag: 0.7 }, 0.6)
    expect(curve.time).toBeGreaterThan(4 * hydrationOfCement(cement, plain, 0.6).time)
    expect(curve.slope).toBeLessThan(hydrationOfCement(cement, plain, 0.6).slope)
    expect(curve.ultimate).toBeLessThanOrEqual(1)
  })
})
