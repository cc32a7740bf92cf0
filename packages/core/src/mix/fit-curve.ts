import type { LeastSquaresFit } from '../numeric/index.js'
import { standardErrors } from '../numeric/index.js'
import type { Problem, Result } from '../result/index.js'
import { failure, success } from '../result/index.js'
import { type BandOptions, bootstrapBand, edgeGrowth } from './bootstrap.js'
import type { Candidate, CurveFit, FittedParameter, FittedPoint } from './curve-fit.js'
import { carries, correctedAkaike, distinctAges, fitFamily, type GrowthFamily } from './growth-family.js'
import type { Observation } from './mix-test.js'

interface Tried<Growth> {
  readonly family: GrowthFamily<Growth>
  readonly fit: LeastSquaresFit
  readonly aicc: number | undefined
}

/** Evidence by which a richer curve has to beat a simpler one; below it the tests do not tell them apart. */
const CLEARLY_BETTER = 2
/** Studentised residual from which a test is named: about one in a thousand by chance. */
const OUTLYING = 3.5

/**
 * Fits the family of curves that the tests support and says why; families come simplest first.
 * Outliers are named and stay in: to leave one out is the lead's decision.
 */
export function fitCurve<Growth>(
  what: string,
  families: readonly GrowthFamily<Growth>[],
  observations: readonly Observation[],
  options: BandOptions,
): Result<CurveFit<Growth>> {
  const able = families.filter(family => carries(family, observations))
  if (able.length === 0) return failure([tooFew(what, families[0]!.fewest, observations)])
  const tried = able.map(family => {
    const fit = fitFamily(family, observations)
    return { family, fit, aicc: correctedAkaike(fit.sumOfSquares, observations.length, family.names.length) }
  })
  const chosen = choose(tried)
  return success({ ...curveOf(chosen, observations, options), ...evidenceOf(tried, chosen, families) })
}

const tooFew = (what: string, fewest: number, observations: readonly Observation[]): Problem => ({
  code: 'mix/too-few-tests',
  at: observations.map(({ at }) => at).join(', ') || 'tests',
  say: `Growth of ${what} needs at least ${fewest} tests at 3 different ages; there are ${observations.length} at ${distinctAges(observations)}. Test it again later the same hour, or take these rows out to plan with the default band.`,
  values: { found: observations.length, needed: fewest },
})

/** The simplest curve that no other one clearly beats. */
function choose<Growth>(tried: readonly Tried<Growth>[]): Tried<Growth> {
  const known = tried.filter(each => each.aicc !== undefined)
  const best = Math.min(...known.map(each => each.aicc!))
  return known.find(each => each.aicc! <= best + CLEARLY_BETTER) ?? tried[0]!
}

function evidenceOf<Growth>(
  tried: readonly Tried<Growth>[],
  chosen: Tried<Growth>,
  families: readonly GrowthFamily<Growth>[],
): Pick<CurveFit<Growth>, 'candidates' | 'why'> {
  const best = Math.min(...tried.map(each => each.aicc ?? Infinity))
  const likelihoods = tried.map(each => (each.aicc === undefined ? 0 : Math.exp((best - each.aicc) / 2)))
  const sum = likelihoods.reduce((total, likelihood) => total + likelihood, 0)
  const candidates = tried.map(
    (each, i): Candidate => ({
      kind: each.family.kind,
      parameters: each.family.names.length,
      ...(each.aicc === undefined ? {} : { aicc: each.aicc }),
      weight: sum > 0 ? likelihoods[i]! / sum : each === chosen ? 1 : 0,
    }),
  )
  return { candidates, why: reason(candidates, chosen.family.kind, families.length) }
}

function reason(candidates: readonly Candidate[], kind: string, families: number): string {
  const chosen = candidates.find(candidate => candidate.kind === kind)!
  const others = candidates.filter(candidate => candidate !== chosen && candidate.aicc !== undefined)
  if (chosen.aicc === undefined) return `${kind}: too few tests to weigh one curve against another.`
  if (others.length === 0)
    return families > 1 ? `${kind}: too few tests for a richer curve.` : `${kind}: the only curve tried.`
  const compared = others.map(other => {
    const lead = other.aicc! - chosen.aicc!
    if (lead >= CLEARLY_BETTER) return `${lead.toFixed(1)} better than ${other.kind}`
    return `simpler than ${other.kind}, which is not clearly better (${lead.toFixed(1)})`
  })
  return `${kind}: by AICc ${compared.join(', ')}.`
}

function curveOf<Growth>(
  { family, fit }: Tried<Growth>,
  observations: readonly Observation[],
  options: BandOptions,
) {
  const oldest = Math.max(...observations.map(({ age }) => age))
  const growth = family.make(fit.parameters, oldest)
  const band = bootstrapBand(family, observations, fit, options)
  const points = pointsOf(family, growth, fit, observations)
  const free = Math.max(1, observations.length - family.names.length)
  return {
    kind: family.kind,
    growth,
    lower: edgeGrowth(family, band, 'lower', fit.parameters),
    upper: edgeGrowth(family, band, 'upper', fit.parameters),
    parameters: parametersOf(family, fit),
    ...(fit.covariance ? { covariance: fit.covariance } : {}),
    scatter: Math.sqrt(fit.sumOfSquares / free),
    points,
    band,
    outliers: points.filter(point => Math.abs(point.studentised) > OUTLYING).map(({ at }) => at),
  }
}

function parametersOf<Growth>(family: GrowthFamily<Growth>, fit: LeastSquaresFit): FittedParameter[] {
  const errors = standardErrors(fit)
  return family.names.map((name, i) => ({
    name,
    value: fit.parameters[i]!,
    unit: family.units[i]!,
    ...(errors ? { standardError: errors[i]! } : {}),
  }))
}

/** Externally studentised residuals: each against the scatter of the others, so that an outlier cannot hide itself. */
function pointsOf<Growth>(
  family: GrowthFamily<Growth>,
  growth: Growth,
  fit: LeastSquaresFit,
  observations: readonly Observation[],
): FittedPoint[] {
  const free = observations.length - family.names.length - 1
  return observations.map(({ at, age, value }, i) => {
    const residual = -fit.residuals[i]!
    const loose = Math.max(1e-9, 1 - fit.leverages[i]!)
    const others = free > 0 ? Math.max(0, fit.sumOfSquares - residual ** 2 / loose) / free : 0
    const studentised = others > 0 ? residual / Math.sqrt(others * loose) : 0
    return { at, age, measured: value, fitted: family.value(growth, age), residual, studentised }
  })
}
