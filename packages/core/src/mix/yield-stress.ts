import type { Pascals, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { YieldGrowth } from './mix-model.js'

/**
 * Static yield stress of the resting material, in Pa, at equivalent age t.
 *
 *   linear       τ = τ₀ + A·t                                         [Roussel2006]
 *   bilinear     τ = τ₀ + R·min(t, tk) + A·max(0, t − tk)             [Kruger2019]
 *   exponential  τ = τ₀ + A·tc·(exp(t/tc) − 1)                        [Perrot2015]
 *
 * @param growth  start τ₀ [Pa], rates [Pa/s], knee tk and time tc [s]
 * @param at      equivalent age at the reference temperature [s]; past `until` the value is held
 *
 * Source   [Roussel2006], [Perrot2015], [Kruger2019], all from memory.
 * Range    0 … `testedTo` of the mix; `checkAge` reports what lies outside.
 * Assumes  undisturbed rest and no drying; the laws end before initial set.
 */
export function yieldStress(growth: YieldGrowth, at: Seconds): Pascals {
  assert(at >= 0 && Number.isFinite(at), 'material has a finite age, 0 s or more')
  const age = Math.min(at, growth.until ?? Infinity)
  switch (growth.kind) {
    case 'linear':
      return growth.start + growth.rate * age
    case 'bilinear':
      return (
        growth.start +
        growth.earlyRate * Math.min(age, growth.kneeAge) +
        growth.lateRate * Math.max(0, age - growth.kneeAge)
      )
    case 'exponential':
      return growth.start + growth.rate * growth.time * Math.expm1(age / growth.time)
  }
}

/** Slope of the yield stress at an equivalent age, Pa/s: the structuration rate Athix of the literature. */
export function yieldRate(growth: YieldGrowth, age: Seconds): number {
  assert(age >= 0 && Number.isFinite(age), 'material has a finite age, 0 s or more')
  if (age > (growth.until ?? Infinity)) return 0
  switch (growth.kind) {
    case 'linear':
      return growth.rate
    case 'bilinear':
      return age < growth.kneeAge ? growth.earlyRate : growth.lateRate
    case 'exponential':
      return growth.rate * Math.exp(age / growth.time)
  }
}

/**
 * Equivalent age [s] at which the yield stress reaches a value; none when it never does. Linear: t = (τ − τ₀)/A.
 *
 * Source   [Roussel2006], [Kruger2019], [Perrot2015]: `yieldStress` turned round, closed form.
 * Range    ages the mix was tested at.
 * Assumes  the material rests.
 */
export function ageAtYield(growth: YieldGrowth, stress: Pascals): Seconds | undefined {
  const age = ageOnCurve(growth, stress)
  return age !== undefined && age <= (growth.until ?? Infinity) ? age : undefined
}

function ageOnCurve(growth: YieldGrowth, stress: Pascals): Seconds | undefined {
  if (stress <= growth.start) return 0
  const missing = stress - growth.start
  switch (growth.kind) {
    case 'linear':
      return growth.rate > 0 ? missing / growth.rate : undefined
    case 'bilinear':
      return ageAtBilinear(growth, missing)
    case 'exponential':
      return growth.rate > 0 ? growth.time * Math.log1p(missing / (growth.rate * growth.time)) : undefined
  }
}

function ageAtBilinear(
  growth: Extract<YieldGrowth, { kind: 'bilinear' }>,
  missing: Pascals,
): Seconds | undefined {
  const atKnee = growth.earlyRate * growth.kneeAge
  if (missing <= atKnee) return missing / growth.earlyRate
  return growth.lateRate > 0 ? growth.kneeAge + (missing - atKnee) / growth.lateRate : undefined
}

/** The same growth with every stress and rate multiplied: a band that keeps its times. */
export function scaleYield(growth: YieldGrowth, share: number): YieldGrowth {
  switch (growth.kind) {
    case 'linear':
      return { ...growth, start: growth.start * share, rate: growth.rate * share }
    case 'bilinear':
      return {
        ...growth,
        start: growth.start * share,
        earlyRate: growth.earlyRate * share,
        lateRate: growth.lateRate * share,
      }
    case 'exponential':
      return { ...growth, start: growth.start * share, rate: growth.rate * share }
  }
}
