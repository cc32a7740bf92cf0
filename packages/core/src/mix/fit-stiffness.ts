import type { Result } from '../result/index.js'
import { success } from '../result/index.js'
import type { BandOptions } from './bootstrap.js'
import type { CurveFit } from './curve-fit.js'
import type { Arrhenius } from './equivalent-age.js'
import { fitCurve } from './fit-curve.js'
import { fitFamily } from './growth-family.js'
import type { StiffnessPart } from './mix-fit.js'
import type { MixModel, StiffnessGrowth, YieldGrowth } from './mix-model.js'
import type { MixTest } from './mix-test.js'
import { atReference, stiffnesses } from './observations.js'
import { scaleStiffness, stiffness } from './stiffness.js'
import { stiffnessFamilies } from './stiffness-families.js'
import { yieldStress } from './yield-stress.js'

/** Stiffness growth from the compression tests; without any it follows the yield stress, and says so. */
export function fitStiffness(
  tests: readonly MixTest[],
  clock: Arrhenius,
  yields: CurveFit<YieldGrowth>,
  base: MixModel,
  band: BandOptions,
): Result<StiffnessPart> {
  const measured = stiffnesses(tests)
  if (measured.length === 0) return success(stiffnessFromYield(yields, base))
  const fit = fitCurve('stiffness', stiffnessFamilies, atReference(measured, clock), band)
  if (!fit.ok) return fit
  const { growth, lower } = fit.value
  return success({ growth, lower, curve: fit.value, assumed: [] })
}

/** Ratio of the base mix carried over to the yield growth of the tests, with the base mix's own wide band on top. */
function stiffnessFromYield(yields: CurveFit<YieldGrowth>, base: MixModel): StiffnessPart {
  const ratio = stiffness(base.fitted.stiffness, 0) / yieldStress(base.fitted.yield, 0)
  const share = base.lowerShare ?? 0.6
  const growth = followed(yields, yields.growth, ratio)
  const low = followed(yields, yields.lower, ratio * share)
  const highest = Math.max(
    ...yields.band.map(({ age }) => stiffness(low, age) / (ratio * share * yieldStress(yields.lower, age))),
  )
  return {
    growth,
    lower: scaleStiffness(low, Math.min(1, 1 / highest)),
    assumed: [
      `stiffness assumed at ${ratio.toFixed(0)} times the yield stress, its lower band at ${share} of that: no compression test gives a stiffness`,
    ],
  }
}

/** The parabola nearest to `ratio` times a yield growth over the tested ages. */
function followed(yields: CurveFit<YieldGrowth>, growth: YieldGrowth, ratio: number): StiffnessGrowth {
  const points = yields.band.map(({ age }) => ({ at: 'band', age, value: ratio * yieldStress(growth, age) }))
  const parabola = stiffnessFamilies.at(-1)!
  return parabola.make(fitFamily(parabola, points).parameters, points.at(-1)!.age)
}
