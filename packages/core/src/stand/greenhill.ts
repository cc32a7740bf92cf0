import type { Metres, Pascals } from '../quantity/index.js'

/** 9/4·j², j = 1.8663508588739 the first zero of the Bessel function J₋⅓. */
export const GREENHILL = 2.25 * 1.8663508588739 ** 2

/**
 * Height at which an upright bar of one cross-section buckles under its own weight, in m: l³ = C·E·I/(ρ·g·A), C = 7.83735.
 *
 * @param modulus  E [Pa]; E/(1 − ν²) for a long wall
 * @param radius   radius of gyration √(I/A): h/√12 of a strip, d/4 of a round bar [m]
 * @param density  ρ [kg/m³]
 * @param gravity  g [m/s²]
 *
 * Source   [Greenhill1881]; C derived anew from the Bessel zero.
 * Range    slender bars; the constant is exact.
 * Assumes  clamped foot, free top, straight, elastic, no ageing.
 */
export const greenhillHeight = (modulus: Pascals, radius: Metres, density: number, gravity: number): Metres =>
  Math.cbrt((GREENHILL * modulus * radius ** 2) / (density * gravity))

/**
 * Height at which a free wall with linear curing buckles, in units of L₀, by the published fit 1.98635 + 0.996·ξ̄^0.793.
 *
 * @param rate  ξ̄ = ξ·L₀/rise [1]
 *
 * Source   [Suiker2018], from memory; checked against exact integration.
 * Range    0 ≤ ξ̄ ≤ 5, within 3.5 %; beyond it is wrong (true growth is √ξ̄).
 * Assumes  long free wall. A cross-check only: `bucklingHeight` is exact.
 */
export const suikerFitHeight = (rate: number): number => 1.98635 + 0.996 * rate ** 0.793
