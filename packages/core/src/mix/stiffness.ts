import type { Pascals, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { StiffnessGrowth } from './mix-model.js'

/**
 * Young's modulus of the green material, in Pa, at equivalent age t: E = E₀ + a·t + b·t².
 *
 * @param growth  start E₀ [Pa], rate a [Pa/s], bend b [Pa/s²]
 * @param at      equivalent age at the reference temperature [s]; past `until` the value is held
 *
 * Source   [Wolfs2018] linear, read second-hand; [WolfsSuiker2019] asks for the square term at low rates, read directly (abstract).
 * Range    0 … `testedTo` of the mix; `checkAge` reports what lies outside.
 * Assumes  small strain, undisturbed rest, before initial set.
 */
export function stiffness(growth: StiffnessGrowth, at: Seconds): Pascals {
  assert(at >= 0 && Number.isFinite(at), 'material has a finite age, 0 s or more')
  const age = Math.min(at, growth.until ?? Infinity)
  return growth.start + growth.rate * age + growth.bend * age * age
}

export const scaleStiffness = (growth: StiffnessGrowth, share: number): StiffnessGrowth => ({
  ...growth,
  start: growth.start * share,
  rate: growth.rate * share,
  bend: growth.bend * share,
})
