import type { KilogramsPerCubicMetre, Metres, MetresPerSecond, Seconds } from '../quantity/index.js'

const GRAVITY = 9.81

/** A layer laid on a resting one. */
export interface Laying {
  readonly density: KilogramsPerCubicMetre
  /** Height of the fresh layer h. */
  readonly layerHeight: Metres
  /** Speed of the nozzle V. */
  readonly speed: MetresPerSecond
  /** Plastic viscosity µ of the fresh layer [Pa·s]. */
  readonly plasticViscosity: number
  /** Structuration rate Athix of the resting layer [Pa/s]. */
  readonly structuration: number
}

/**
 * Longest rest after which a fresh layer still mixes with the one below it, in s.
 *
 *   t = √( (ρ·g·h)²/12 + (2·µ·V/h)² ) / Athix
 *
 * Source   [RousselCussigh2008] for multilayer casting, repeated in [Roussel2018]; from memory.
 * Range    linear structuration from the moment of rest; Athix > 0 (0: never, answered as Infinity).
 * Scatter  an index: V and µ in the printing case are uncertain. Calibrate with the site's own bond tests.
 * Assumes  no drying of the surface, which usually governs the joint on site.
 */
export function intermixingRest(laying: Laying): Seconds {
  const weight = laying.density * GRAVITY * laying.layerHeight
  const drag = (2 * laying.plasticViscosity * laying.speed) / laying.layerHeight
  return Math.hypot(weight / Math.sqrt(12), drag) / laying.structuration
}
