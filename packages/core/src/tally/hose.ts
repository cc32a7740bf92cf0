import type { CubicMetres, Kilograms, Metres } from '../quantity/index.js'

/**
 * What the hose holds: pumped full before the first bead, washed out after the last.
 *
 *   V = π/4 · d² · L
 *
 * @param diameter  inner diameter d [m]
 * @param length    L [m]
 *
 * Source   closed form (cylinder).
 * Range    any.
 * Assumes  the hose is emptied as waste at the end of the day and nothing of it is printed.
 */
export const hoseVolume = (diameter: Metres, length: Metres): CubicMetres =>
  (Math.PI / 4) * diameter ** 2 * length

/** Dry material and water in a mass of wet mix. */
export interface Split {
  readonly dry: Kilograms
  readonly water: Kilograms
}

/**
 * Dry material and water of a wet mass.
 *
 *   dry = m / (1 + r),  water = m · r / (1 + r)
 *
 * @param mass   wet mix m [kg]
 * @param ratio  water per kg of dry material r [kg/kg]
 *
 * Source   mass balance.
 * Range    r ≥ 0.
 * Assumes  no water is lost between mixer and wall; admixtures are part of the dry bag.
 */
export function splitMix(mass: Kilograms, ratio: number): Split {
  const dry = mass / (1 + ratio)
  return { dry, water: dry * ratio }
}
