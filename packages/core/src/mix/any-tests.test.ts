import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { uniformFrom } from '../numeric/index.js'
import { fitMix, type MixTest, stiffness, yieldStress } from './index.js'

/** Whatever a sheet may hold: ages, temperatures and values from sensible to absurd, in any mixture of kinds. */
const number = fc.oneof(
  fc.double({ min: 0, max: 1e5 }),
  fc.double({ min: 500, max: 20_000, noNaN: true }),
  fc.constantFrom(0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e12),
)
/** Growing mixes tested badly: every value off by up to two and a half times either way. */
const careless: fc.Arbitrary<MixTest> = fc
  .record({
    kind: fc.constantFrom('vane', 'vane', 'vane', 'compression', 'set', 'cylinder') as fc.Arbitrary<string>,
    at: fc.nat(999).map(String),
    age: fc.double({ min: 60, max: 15_000, noNaN: true }),
    temperature: fc.double({ min: 5, max: 38, noNaN: true }),
    off: fc.double({ min: 0.4, max: 2.5, noNaN: true }),
  })
  .map(({ off, ...made }) => {
    const stress = (900 + 0.9 * made.age) * off
    const others = { strength: stress * 1.7, stiffness: stress * 90, resistance: stress * 100 }
    return {
      ...made,
      stress,
      ...others,
      ...(made.kind === 'cylinder' ? { age: 3e5 + made.age * 100 } : {}),
    } as unknown as MixTest
  })
const anyTest = (value: fc.Arbitrary<number>): fc.Arbitrary<MixTest> =>
  fc
    .record({
      kind: fc.constantFrom(
        'vane',
        'compression',
        'spread',
        'set',
        'density',
        'cylinder',
      ) as fc.Arbitrary<string>,
      at: fc.nat(999).map(String),
      age: fc.oneof(value, fc.constantFrom(300, 1800, 3600)),
      temperature: fc.double({ min: 5, max: 38, noNaN: true }),
      stress: value,
      strength: value,
      stiffness: value.map(v => v * 100),
      diameter: fc.double({ min: 0.15, max: 0.4, noNaN: true }),
      volume: fc.constant(3e-4),
      resistance: value,
      density: fc.double({ min: 2000, max: 2150, noNaN: true }),
    })
    .map(record => record as unknown as MixTest)

const fit = (tests: readonly MixTest[]) =>
  fitMix(tests, { name: 'any', provenance: 'any', random: uniformFrom(1), replicates: 8 })

function expectUsable(tests: readonly MixTest[]): void {
  const result = fit(tests)
  if (!result.ok) {
    expect(result.problems.length).toBeGreaterThan(0)
    for (const { say, code } of result.problems) expect(`${code} ${say}`).toMatch(/^mix\/[a-z-]+ .{20,}/)
    return
  }
  const { lower, fitted, testedTo } = result.value.mix
  for (const age of [0, testedTo / 3, testedTo, 10 * testedTo, 1e9]) {
    const [low, best] = [yieldStress(lower.yield, age), yieldStress(fitted.yield, age)]
    expect(low).toBeGreaterThan(0)
    expect(low).toBeLessThanOrEqual(best * (1 + 1e-9))
    expect(Number.isFinite(best)).toBe(true)
    expect(stiffness(lower.stiffness, age)).toBeGreaterThan(0)
    expect(stiffness(lower.stiffness, age)).toBeLessThanOrEqual(stiffness(fitted.stiffness, age) * (1 + 1e-9))
  }
}

describe('fitMix, whatever the sheet holds', () => {
  it('answers problems with reasons, or a lower band that is finite and under the best estimate at any age', () =>
    fc.assert(fc.property(fc.array(anyTest(number), { maxLength: 12 }), expectUsable), { numRuns: 120 }))

  it('also where a mix was tested carelessly', () =>
    fc.assert(fc.property(fc.array(careless, { minLength: 4, maxLength: 20 }), expectUsable), {
      numRuns: 80,
    }))
})
