import { brent } from '../numeric/index.js'
import type { CubicMetresPerSecond, Metres, Pascals } from '../quantity/index.js'
import { assert } from '../result/index.js'

/** A straight hose. */
export interface Hose {
  readonly length: Metres
  /** Inside. */
  readonly diameter: Metres
}

/** The mix while it is sheared: yield stress [Pa] and plastic viscosity [Pa·s]. */
export interface ShearedMix {
  readonly yield: Pascals
  readonly viscosity: number
}

/**
 * Stress at the wall of the hose under a pressure drop, in Pa: τw = ΔP·R/(2L).
 *
 * Source   closed form: balance of forces on the plug.
 * Range    any steady flow.
 * Assumes  a straight round hose.
 */
export const wallStress = ({ length, diameter }: Hose, pressure: Pascals): Pascals =>
  (pressure * diameter) / (4 * length)

/**
 * Flow through a hose that shears the whole mix, in m³/s.
 *
 *   Q = π·R⁴·ΔP/(8·µ·L)·(1 − 4x/3 + x⁴/3),   x = τ₀/τw;   0 where x ≥ 1
 *
 * @param hose      length and inside diameter [m]
 * @param mix       yield stress and plastic viscosity of the mix in motion
 * @param pressure  drop along the hose, without the rise [Pa]
 *
 * Source   [Buckingham1921], from memory; exact for a Bingham fluid.
 * Range    laminar flow, which mortar in a hose always is.
 * Assumes  no slip: real hoses slip on a lubricating layer, so for a given pressure this is the least flow.
 */
export function binghamFlow(hose: Hose, mix: ShearedMix, pressure: Pascals): CubicMetresPerSecond {
  const stress = wallStress(hose, pressure)
  if (stress <= mix.yield) return 0
  const x = mix.yield / stress
  const radius = hose.diameter / 2
  const newton = (Math.PI * radius ** 4 * pressure) / (8 * mix.viscosity * hose.length)
  return newton * (1 - (4 * x) / 3 + x ** 4 / 3)
}

/**
 * Pressure drop [Pa] that drives a flow: the p of Q(p) = flow with `binghamFlow`, by root finding.
 *
 * Source   [Buckingham1921], as `binghamFlow`.
 * Range    flow > 0; the answer is above 4·L·τ₀/D, below which nothing moves.
 * Assumes  the whole mix shears: an upper bound where it slips on a layer of paste.
 */
export function binghamPressure(hose: Hose, mix: ShearedMix, flow: CubicMetresPerSecond): Pascals {
  assert(flow > 0, 'a pressure belongs to a flow')
  const least = (4 * hose.length * mix.yield) / hose.diameter
  const newton = (8 * mix.viscosity * hose.length * flow) / (Math.PI * (hose.diameter / 2) ** 4)
  // Above the yield pressure by 4/3 of itself and the viscous drop the flow is always reached: 1 − 4x/3 is a lower bound.
  const most = (4 / 3) * least + newton
  return brent(pressure => binghamFlow(hose, mix, pressure) / flow - 1, least, most * (1 + 1e-9), 1e-6).at
}
