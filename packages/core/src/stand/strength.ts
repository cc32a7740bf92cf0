import type { YieldGrowth } from '../mix/index.js'
import { yieldStress } from '../mix/index.js'
import type { Pascals, Radians, Seconds } from '../quantity/index.js'

/** Which strength the foot of a green wall is held against. Sources disagree by half: it is always said. */
export type StrengthRule =
  | { readonly kind: 'von-mises' }
  | { readonly kind: 'mohr-coulomb'; readonly friction: Radians }
  | { readonly kind: 'uniaxial'; readonly measured: YieldGrowth }

export const strengthWords = (rule: StrengthRule): string =>
  ({
    'von-mises': 'von Mises, √3 times the yield stress',
    'mohr-coulomb': 'Mohr–Coulomb, cohesion and friction angle',
    uniaxial: 'uniaxial compression as measured',
  })[rule.kind]

/**
 * Uniaxial strength of a material with cohesion c and friction angle φ: σ = 2c·cos φ/(1 − sin φ).
 *
 * Source   [Suiker2018]; closed form of the Mohr circle that touches the envelope.
 * Range    0 ≤ φ < 90°; φ = 0 gives 2c.
 * Assumes  no confinement and undrained friction of the fresh material.
 */
export const mohrCoulombStrength = (cohesion: Pascals, friction: Radians): Pascals =>
  (2 * cohesion * Math.cos(friction)) / (1 - Math.sin(friction))

/**
 * Compression a level of the green wall bears before it yields, in Pa, at an equivalent age.
 *
 *   von Mises      √3·τ₀
 *   Mohr–Coulomb   2·τ₀·cos φ/(1 − sin φ)
 *   uniaxial       the measured growth
 *
 * Source   [Suiker2018] and [Roussel2018], from memory; elementary plasticity.
 * Range    ages the mix was tested to.
 * Assumes  a slender wall: no confinement from foot or nozzle.
 */
export function plasticStrength(rule: StrengthRule, yielding: YieldGrowth, age: Seconds): Pascals {
  switch (rule.kind) {
    case 'von-mises':
      return Math.sqrt(3) * yieldStress(yielding, age)
    case 'mohr-coulomb':
      return mohrCoulombStrength(yieldStress(yielding, age), rule.friction)
    case 'uniaxial':
      return yieldStress(rule.measured, age)
  }
}
