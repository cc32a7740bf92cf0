import { sayQuantity } from '../limit/index.js'
import { median } from '../numeric/index.js'
import type { KilogramsPerCubicMetre } from '../quantity/index.js'
import type { Problem, Result } from '../result/index.js'
import { assert, failure, success } from '../result/index.js'
import type { BandOptions } from './bootstrap.js'
import { checkTests } from './check-tests.js'
import type { CurveFit } from './curve-fit.js'
import { defaultMix } from './default-mix.js'
import { type Activation, fitActivation } from './fit-activation.js'
import { fitStiffness } from './fit-stiffness.js'
import { fitStrength } from './fit-strength.js'
import { compareCompression, fitYield, yieldTests } from './fit-yield.js'
import type { FitOptions, MixFit, StiffnessPart, StrengthPart } from './mix-fit.js'
import type { MixModel, YieldGrowth } from './mix-model.js'
import type { MixTest } from './mix-test.js'
import { atReference, compressionYields, penetrations, stiffnesses } from './observations.js'
import { settingTimes } from './setting.js'

/** Everything fitted, before it is put together. */
interface Parts {
  readonly density: KilogramsPerCubicMetre
  readonly weighed: boolean
  readonly activation: Activation
  readonly clock: { readonly activation: number; readonly reference: number }
  readonly growth: CurveFit<YieldGrowth>
  readonly stiff: StiffnessPart
  readonly strong: StrengthPart
}

/** Fits a mix to the site's own tests. Tests that cannot be used are all reported at once, and nothing is fitted. */
export function fitMix(all: readonly MixTest[], options: FitOptions): Result<MixFit> {
  const base = options.base ?? defaultMix
  const tests = all.filter(test => !options.leaveOut?.includes(test.at))
  const bad = [...unknownPlaces(all, options.leaveOut ?? []), ...checkTests(tests, options.units)]
  if (bad.length > 0) return failure(bad)
  const parts = fitParts(tests, options, base)
  return parts.ok ? success(fitOf(all, tests, parts.value, options, base)) : parts
}

function fitParts(tests: readonly MixTest[], options: FitOptions, base: MixModel): Result<Parts> {
  const weighed = tests.flatMap(test => (test.kind === 'density' ? [test.density] : []))
  const density = weighed.length > 0 ? median(weighed) : base.density
  const reference = options.reference ?? base.reference
  const yields = yieldTests(tests, density).used
  const activation = fitActivation(yields, reference, base.activation)
  const clock = { activation: activation.value, reference }
  const band = bandOptions(options, base)
  const growth = fitYield(yields, clock, band, options.units)
  const setting = settingTimes(atReference(penetrations(tests), clock))
  const strong = fitStrength(tests, clock, base, setting, band, options.units)
  if (!growth.ok) return failure([...growth.problems, ...problemsOf(strong), ...lonelyStiffness(tests)])
  const stiff = fitStiffness(tests, clock, growth.value, base, band)
  if (!stiff.ok || !strong.ok) return failure([...problemsOf(stiff), ...problemsOf(strong)])
  return success({
    density,
    weighed: weighed.length > 0,
    activation,
    clock,
    growth: growth.value,
    stiff: stiff.value,
    strong: strong.value,
  })
}

function fitOf(
  all: readonly MixTest[],
  tests: readonly MixTest[],
  parts: Parts,
  options: FitOptions,
  base: MixModel,
): MixFit {
  const { growth, stiff, strong, activation, clock, density } = parts
  const setting = settingTimes(atReference(penetrations(tests), clock))
  return {
    mix: mixOf(tests, parts, options, base),
    density,
    yield: growth,
    ...(stiff.curve ? { stiffness: stiff.curve } : {}),
    ...(strong.curve ? { strength: strong.curve } : {}),
    ...(setting ? { setting } : {}),
    activation,
    assumed: [
      ...(parts.weighed
        ? []
        : [
            `density assumed at ${sayQuantity(base.density, 'kg/m³', options.units ?? 'metric')}: nothing was weighed`,
          ]),
      ...(activation.fitted ? [] : [activation.say]),
      ...stiff.assumed,
      ...strong.assumed,
    ],
    cautions: [
      ...yieldTests(tests, density).cautions,
      ...compareCompression(compressionYields(tests), clock, growth),
      ...lateFirstTest(growth),
      ...poorFit('yield', growth),
      ...(stiff.curve ? poorFit('stiffness', stiff.curve) : []),
    ],
    outliers: [growth, stiff.curve, strong.curve].flatMap(curve => curve?.outliers ?? []),
    leftOut: all.filter(test => options.leaveOut?.includes(test.at)).map(({ at }) => at),
  }
}

/** The model planning uses: every growth is held past the oldest test, so that no one plans on what nobody has seen. */
function mixOf(tests: readonly MixTest[], parts: Parts, options: FitOptions, base: MixModel): MixModel {
  const { growth, stiff, strong, clock, density } = parts
  const oldest = [growth, stiff.curve].map(curve =>
    curve ? Math.max(...curve.points.map(({ age }) => age)) : Infinity,
  )
  const testedTo = Math.min(...oldest)
  const fresh = [...yieldTests(tests, density).used, ...stiffnesses(tests)].map(test => test.temperature)
  const held = <Growth extends object>(curve: Growth) => ({ ...curve, until: testedTo })
  return {
    ...base,
    name: options.name,
    provenance: options.provenance,
    density,
    fitted: { yield: held(growth.growth), stiffness: held(stiff.growth) },
    lower: { yield: held(growth.lower), stiffness: held(stiff.lower) },
    upper: { yield: held(growth.upper) },
    lowerProbability: options.probability ?? base.lowerProbability,
    strength: strong.growth,
    activation: clock.activation,
    reference: clock.reference,
    testedTo,
    testedTemperatures: [Math.min(...fresh), Math.max(...fresh)],
    sources: { ...base.sources, ...sourcesOf(parts, options.provenance) },
  }
}

function sourcesOf({ weighed, activation, stiff, strong }: Parts, tests: string): Record<string, string> {
  const measured = {
    yield: true,
    lower: true,
    testedTo: true,
    density: weighed,
    activation: activation.fitted,
  }
  const fields = { ...measured, stiffness: stiff.curve !== undefined, strength: strong.curve !== undefined }
  return Object.fromEntries(Object.entries(fields).flatMap(([field, by]) => (by ? [[field, tests]] : [])))
}

function bandOptions(options: FitOptions, base: MixModel): BandOptions {
  const probability = options.probability ?? base.lowerProbability
  assert(
    probability > 0 && probability < 0.5,
    `the lower band is a share below one half (found ${probability})`,
  )
  return {
    random: options.random,
    replicates: options.replicates ?? 400,
    probability,
    about: options.about ?? 'batch',
  }
}

const unknownPlaces = (tests: readonly MixTest[], places: readonly string[]): Problem[] =>
  places
    .filter(place => !tests.some(({ at }) => at === place))
    .map(place => ({
      code: 'mix/unknown-test',
      at: place,
      say: `There is no test “${place}” to leave out; tests are named by file and line, like “${tests[0]?.at ?? 'tests.csv:2'}”.`,
    }))

const problemsOf = (result: Result<unknown>): readonly Problem[] => (result.ok ? [] : result.problems)

/** Said even when the yield stress could not be fitted: the lead hears of both gaps in one go. */
function lonelyStiffness(tests: readonly MixTest[]): Problem[] {
  const found = stiffnesses(tests)
  if (found.length === 0 || found.length >= 3) return []
  return [
    {
      code: 'mix/too-few-tests',
      at: found.map(({ at }) => at).join(', '),
      say: `Growth of stiffness needs at least 3 tests; there are ${found.length}. Test it again later the same hour, or leave the stiffness out to plan with the default band.`,
      values: { found: found.length, needed: 3 },
    },
  ]
}

function lateFirstTest({ points }: CurveFit<YieldGrowth>): string[] {
  const youngest = Math.min(...points.map(({ age }) => age))
  if (youngest <= 900) return []
  return [
    `the youngest yield test is ${(youngest / 60).toFixed(0)} min old: the stress at the nozzle, which carries the first layers, is an extrapolation`,
  ]
}

/** Repeated tests of fresh mortar differ by a tenth; a quarter is either careless testing or the wrong curve. */
function poorFit(what: string, { scatter, kind }: CurveFit<unknown>): string[] {
  if (scatter <= 0.25) return []
  return [
    `the ${what} tests scatter by ${(100 * scatter).toFixed(0)} % about the ${kind} curve: look at the residuals, and test at more ages before relying on it`,
  ]
}
