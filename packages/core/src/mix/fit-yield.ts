import type { Units } from '../limit/index.js'
import { median } from '../numeric/index.js'
import type { KilogramsPerCubicMetre } from '../quantity/index.js'
import type { Problem, Result } from '../result/index.js'
import { failure } from '../result/index.js'
import type { BandOptions } from './bootstrap.js'
import type { CurveFit } from './curve-fit.js'
import type { Arrhenius } from './equivalent-age.js'
import { fitCurve } from './fit-curve.js'
import type { YieldGrowth } from './mix-model.js'
import type { MixTest } from './mix-test.js'
import { type Aged, atReference, compressionYields, directYields } from './observations.js'
import { sayTestValue } from './test-values.js'
import { yieldFamilies } from './yield-families.js'
import { yieldStress } from './yield-stress.js'

/** The tests a yield growth is fitted to, and what is odd about them. */
export interface YieldTests {
  readonly used: readonly Aged[]
  readonly cautions: readonly string[]
}

/**
 * Vane, penetrometer and spread come first: they measure the stress itself. Compression stands in (over √3) where they
 * are too few. The two disagree by tens of per cent on the same mortar, so they are never thrown together.
 */
export function yieldTests(tests: readonly MixTest[], density: KilogramsPerCubicMetre): YieldTests {
  const [direct, compressed] = [directYields(tests, density), compressionYields(tests)]
  const ages = new Set(direct.map(({ clockAge }) => clockAge)).size
  if (ages >= 3 || direct.length >= compressed.length) return { used: direct, cautions: besides(compressed) }
  return {
    used: compressed,
    cautions: [
      `yield stress taken from compression strength over √3: ${direct.length} vane, penetrometer or spread tests at ${ages} ages are too few`,
    ],
  }
}

const besides = (compressed: readonly Aged[]): string[] =>
  compressed.length === 0
    ? []
    : [`${compressed.length} compression strengths are shown beside the yield stress and not fitted with it`]

/** Yield growth from the tests. A mix that does not stiffen is a problem: no wall of it will stand at any age. */
export function fitYield(
  tests: readonly Aged[],
  clock: Arrhenius,
  band: BandOptions,
  units: Units = 'metric',
): Result<CurveFit<YieldGrowth>> {
  const fit = fitCurve('yield stress', yieldFamilies, atReference(tests, clock), band)
  if (!fit.ok) return fit
  const limp = neverStiffens(fit.value, units)
  return limp ? failure([limp]) : fit
}

/** Compression strengths over √3 against the fitted curve: both are honest tests, and the lead has to know the gap. */
export function compareCompression(
  compressed: readonly Aged[],
  clock: Arrhenius,
  fit: CurveFit<YieldGrowth>,
): string[] {
  const ratios = atReference(compressed, clock).map(({ age, value }) => value / yieldStress(fit.growth, age))
  if (ratios.length === 0) return []
  const ratio = median(ratios)
  if (ratio > 0.7 && ratio < 1.3) return []
  return [
    `compression strength over √3 is ${ratio.toFixed(2)} times the fitted yield stress: say which of the two the wall is planned with`,
  ]
}

function neverStiffens(fit: CurveFit<YieldGrowth>, units: Units): Problem | undefined {
  const ages = fit.points.map(({ age }) => age)
  const [youngest, oldest] = [Math.min(...ages), Math.max(...ages)]
  const [early, late] = [yieldStress(fit.growth, youngest), yieldStress(fit.growth, oldest)]
  if (late > 1.1 * early) return undefined
  return {
    code: 'mix/never-stiffens',
    at: fit.points.map(({ at }) => at).join(', '),
    say: `The yield stress ${late > early ? 'hardly grows' : 'does not grow'}, from ${sayTestValue('stress', early, units)} at ${sayTestValue('age', youngest, units)} to ${sayTestValue('stress', late, units)} at ${sayTestValue('age', oldest, units)}: this mix does not stiffen while it was tested. Test it later, or look for the retarder dose.`,
    values: { early, late },
  }
}
