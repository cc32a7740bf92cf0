import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { describe, expect, it } from 'vitest'
import { normalQuantile } from '../numeric/index.js'
import { fitCurve } from './fit-curve.js'
import { yieldStress } from './index.js'
import { yieldFamilies } from './yield-families.js'

const truth = (age: number) => 1000 + 0.8 * age
const ages = [300, 600, 1200, 1800, 2400, 3000, 3900, 4800]
const [linear] = yieldFamilies

/** Eight tests with 12 % of scatter about the truth, fitted; the edges of the band at half an hour. */
function edgesAt(seed: number, about: 'curve' | 'batch', probability: number) {
  const generator = xoroshiro128plus(seed)
  const random = () => uniformFloat64(generator)
  const draw = () => normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, random())))
  const observations = ages.map((age, i) => ({
    at: `${i}`,
    age,
    value: truth(age) * Math.exp(0.12 * draw()),
  }))
  const fit = fitCurve('yield stress', [linear!], observations, {
    random,
    replicates: 40,
    probability,
    about,
  })
  if (!fit.ok) throw new Error('eight tests carry a line')
  return {
    lower: yieldStress(fit.value.lower, 1800),
    upper: yieldStress(fit.value.upper, 1800),
    batch: truth(1800) * Math.exp(0.12 * draw()),
  }
}

describe('the band of a fit, over 120 sites with a known truth', () => {
  const seeds = Array.from({ length: 120 }, (_, i) => i + 1)
  const misses = (about: 'curve' | 'batch', missed: (edges: ReturnType<typeof edgesAt>) => boolean) =>
    seeds.filter(seed => missed(edgesAt(seed, about, 0.1))).length / seeds.length

  // At most 10 % may miss; with 120 sites the count itself scatters by 2.7 %, so three of those are allowed on top.
  it('of the curve: the truth lies under the lower edge no more often than promised', () => {
    const share = misses('curve', ({ lower }) => truth(1800) < lower)
    expect(share).toBeLessThan(0.18)
  })
  it('of a batch: the next batch lies under the lower edge no more often than promised, and sometimes', () => {
    const share = misses('batch', ({ lower, batch }) => batch < lower)
    expect(share).toBeLessThan(0.18)
    // A band that never fails is no 10 % band: it would cost height for nothing.
    expect(share).toBeGreaterThan(0.01)
  })
  it('of a batch lies outside that of the curve', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const [curve, batch] = [edgesAt(seed, 'curve', 0.05), edgesAt(seed, 'batch', 0.05)]
      expect(batch.lower).toBeLessThan(curve.lower)
      expect(batch.upper).toBeGreaterThan(curve.upper)
    }
  })
})
