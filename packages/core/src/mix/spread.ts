import type { CubicMetres, KilogramsPerCubicMetre, Metres, Pascals } from '../quantity/index.js'
import { assert } from '../result/index.js'

const GRAVITY = 9.81

/**
 * Yield stress from the spread of a known volume on a flat plate, in Pa: τ₀ = 225·ρ·g·V²/(128·π²·R⁵).
 *
 * @param diameter  mean of two diameters across the pat [m]; R is half of it
 * @param volume    of the cone or cylinder filled [m³]
 *
 * Source   [RousselCoussot2005], from memory.
 * Range    thin pats: height well below radius; a pat that hardly spreads is a slump, not a spread.
 * Assumes  slow flow, no inertia, no surface tension (which matters below about 1 Pa·m of thickness).
 */
export function spreadYieldStress(
  diameter: Metres,
  volume: CubicMetres,
  density: KilogramsPerCubicMetre,
): Pascals {
  assert(diameter > 0 && volume > 0 && density > 0, 'a pat has a diameter, a volume and a density')
  return (225 * density * GRAVITY * volume ** 2) / (128 * Math.PI ** 2 * (diameter / 2) ** 5)
}

/** Mean height of the pat over its radius; the thin-pat formula wants it small. */
export const patSlenderness = (diameter: Metres, volume: CubicMetres): number =>
  volume / (Math.PI * (diameter / 2) ** 2) / (diameter / 2)
