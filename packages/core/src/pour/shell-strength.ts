import type { Metres, Pascals } from '../quantity/index.js'
import { assert } from '../result/index.js'

/** How a flat side of a printed shell is held along its edges. */
export type Edge = 'clamped' | 'supported'

/**
 * Largest tension [Pa] in a flat strip of a shell under pressure p, clear span b, thickness t: clamped p·b²/(2t²),
 * simply supported 0.75·p·b²/t².
 *
 * Source   closed form: beam of unit width, M = p·b²/12 and p·b²/8, W = t²/6.
 * Range    spans of several thicknesses.
 * Assumes  bending along the layers; across them the joints govern and nothing may be counted on.
 */
export function stripTension(pressure: Pascals, span: Metres, thickness: Metres, edge: Edge): Pascals {
  assert(span >= 0 && thickness > 0, 'a strip has a span and a thickness')
  return ((edge === 'clamped' ? 0.5 : 0.75) * pressure * span ** 2) / thickness ** 2
}

/** Pressure [Pa] that brings a flat strip to a tension: the inverse of `stripTension`. */
export const stripPressure = (tension: Pascals, span: Metres, thickness: Metres, edge: Edge): Pascals =>
  tension / stripTension(1, span, thickness, edge)

/**
 * Hoop tension [Pa] in a round shell: σ = p·r/t.
 *
 * Source   closed form (ring in equilibrium).
 * Range    r the mean radius, at least five times t: within 1 % of the inner face of a thick ring.
 * Assumes  an unbroken ring: at a start point or a box the tension has nowhere to go.
 */
export const hoopTension = (pressure: Pascals, radius: Metres, thickness: Metres): Pascals =>
  (pressure * radius) / thickness

/**
 * Modulus of rupture [Pa] at a compressive strength: 0.62·√fc [MPa]. A mean value, no design strength.
 *
 * Source   [ACI318-19] 19.2.3, from memory (7.5·√fc in psi).
 * Range    normal-weight concrete.
 * Assumes  wet-cured; a dried surface cracks earlier.
 */
export const ruptureModulus = (strength: Pascals): Pascals => 0.62e6 * Math.sqrt(strength / 1e6)

/**
 * Design tension in bending of plain concrete [Pa]: φ·0.42·√fc [MPa] with φ = 0.60.
 *
 * Source   [ACI318-19] chapter 14, from memory (φ·5·√fc in psi).
 * Range    normal-weight concrete, fc at the age of loading.
 * Assumes  sound material along the bead; layer joints need a reduction of their own.
 */
export const plainTension = (strength: Pascals): Pascals => 0.6 * 0.42e6 * Math.sqrt(strength / 1e6)
