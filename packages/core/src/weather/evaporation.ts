import type { Celsius, Metres, MetresPerSecond, Share } from '../quantity/index.js'
import { saturationPressure } from './psychrometrics.js'

/** Air over a fresh surface; wind at the surface's own height, see `windAtHeight`. */
export interface DryingAir {
  readonly air: Celsius
  readonly humidity: Share
  readonly wind: MetresPerSecond
}

export const evaporationRange = { air: [-5, 50], concrete: [0, 60], humidity: [0, 1], wind: [0, 20] } as const

/** Evaporation beyond which each kind of surface asks for precautions [kg/m² per hour]. */
export const evaporationThresholds = [
  { rate: 1.0, surface: 'ordinary concrete, bleeding', source: 'ACI305-2010' },
  { rate: 0.75, surface: 'stricter national guide', source: 'CCAA2005' },
  { rate: 0.5, surface: 'silica fume or low bleed', source: 'ACI305-2010' },
  {
    rate: 0.25,
    surface: 'thin overlays and printed beads without bleed',
    source: 'common practice, no source',
  },
] as const

/**
 * Water leaving a fresh, uncovered concrete surface, in kg/m² per hour. Negative: condensation.
 *
 *   E = 5·10⁻⁶ · [ (Tc + 18)^2.5 − r·(Ta + 18)^2.5 ] · (V + 4)
 *
 * @param drying    air temperature Ta [°C], humidity r [0–1], wind 0.5 m above the surface [m/s]
 * @param concrete  concrete surface temperature Tc [°C]
 *
 * Source   [Uno1998], read second-hand; V is in km/h there. 4–5 % under the Fahrenheit form, whose constants it rounds.
 * Range    `evaporationRange`.
 * Scatter  ±40 % of the estimate on a real site [Hover2020]. A guide for precautions, not a limit state.
 * Assumes  a wet surface. A bead does not bleed and has two faces: an index, judged by the low thresholds.
 */
export function evaporationPerHour(drying: DryingAir, concrete: Celsius): number {
  return (
    5e-6 * (power25(concrete + 18) - drying.humidity * power25(drying.air + 18)) * (drying.wind * 3.6 + 4)
  )
}

/** x^2.5 by root: three times as fast as `**`; temperatures below the formula's zero count as it. */
function power25(x: number): number {
  const held = Math.max(0, x)
  return held * held * Math.sqrt(held)
}

/**
 * The same by the constants of the Fahrenheit form, unrounded, in kg/m² per hour.
 *
 *   E = 5.2751·10⁻⁶ · [ (Tc + 17.778)^2.5 − r·(Ta + 17.778)^2.5 ] · (V + 4.02336)
 *
 * Source   [Uno1998] / [ACI305-2010], converted exactly.
 * Range    `evaporationRange`.
 * Scatter  ±40 % [Hover2020].
 * Assumes  as `evaporationPerHour`.
 */
export function evaporationUnrounded(drying: DryingAir, concrete: Celsius): number {
  const power = (t: Celsius) => power25(t + 17.7777778)
  return 5.2751e-6 * (power(concrete) - drying.humidity * power(drying.air)) * (drying.wind * 3.6 + 4.02336)
}

/**
 * Evaporation by vapour pressures, in kg/m² per hour.
 *
 *   W = 0.44 (e0 − ea)(0.253 + 0.096 V)  lb/ft² per hour; psi, mph
 *
 * Source   [Menzel1954] by way of [Lerch1957], from memory; checked against the printed table of drying conditions.
 * Range    `evaporationRange`.
 * Scatter  ±40 % [Hover2020].
 * Assumes  a wet surface; saturation pressures by [ASHRAE2017].
 */
export function evaporationMenzel(drying: DryingAir, concrete: Celsius): number {
  const psi = 6894.757
  const gap = (saturationPressure(concrete) - drying.humidity * saturationPressure(drying.air)) / psi
  const mph = drying.wind / 0.44704
  return 4.8824 * 0.44 * gap * (0.253 + 0.096 * mph)
}

/**
 * Wind near the ground from the wind at 10 m [m/s]: u(z) = u10 (z/10)^(1/7).
 *
 * At 0.5 m this gives 0.652 of the mast's wind, close to the two thirds often taken from airport wind.
 *
 * Source   one-seventh power law, common practice, no source.
 * Range    0.1 to 100 m, open site; 0 where there is no wind.
 * Scatter  ×0.5 to ×1.3 among buildings and at corners.
 * Assumes  neutral air over open ground. A logarithmic profile over grass would give 0.48 at 0.5 m: this one dries faster.
 */
export const windAtHeight = (windAt10m: MetresPerSecond, height: Metres = 0.5): MetresPerSecond =>
  windAt10m * (height / 10) ** (1 / 7)

/** Heat that evaporating water takes from the wall [J/kg]: L = 2501 − 2.361 T kJ/kg. Source [ASHRAE2017]; Range 0–60 °C; Assumes liquid water. */
export const latentHeat = (surface: Celsius): number => (2501 - 2.361 * surface) * 1000
