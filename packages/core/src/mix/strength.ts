import type { Pascals, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { StrengthGrowth } from './mix-model.js'

/**
 * Compressive strength of the hardening material, in Pa: S = Su·k(t − t₀)/(1 + k(t − t₀)), and 0 before t₀.
 *
 * @param growth  ultimate Su [Pa], rate constant k [1/s], start t₀ [s]
 * @param age     equivalent age at the reference temperature [s]
 *
 * Source   [Carino1984], form from memory; [CarinoLew2001].
 * Range    from setting to about 28 d of equivalent age.
 * Assumes  moist curing; a hot first day lowers Su, which no maturity function knows (cross-over).
 */
export function strengthAt(growth: StrengthGrowth, age: Seconds): Pascals {
  assert(age >= 0 && Number.isFinite(age), 'material has a finite age, 0 s or more')
  const grown = growth.rateConstant * Math.max(0, age - growth.start)
  return (growth.ultimate * grown) / (1 + grown)
}

/** Equivalent age at which the strength is reached; none at or above the ultimate strength. */
export function ageAtStrength(growth: StrengthGrowth, strength: Pascals): Seconds | undefined {
  if (strength <= 0) return 0
  if (strength >= growth.ultimate) return undefined
  return growth.start + strength / (growth.ultimate - strength) / growth.rateConstant
}
