import type { Metres, Pascals } from '../quantity/index.js'
import { headPressure } from './lateral-pressure.js'
import { type Cavity, defaultPourRules, type Fill, type PourRules } from './pour-plan.js'
import { stripTension } from './shell-strength.js'

/**
 * Compressive strength [Pa] a shell needs before a lift of flowing fill may stand in it: `bearablePressure` turned round.
 *
 *   fc = ( k·p·0.75·b²/t² / (0.60·0.42·layers) )²  MPa
 *
 * Source   [ACI318-19] chapter 14, from memory; closed-form strip.
 * Range    as `bearablePressure`.
 * Assumes  full head, sides simply supported between cross ties.
 */
export function neededStrength(
  cavity: Cavity,
  fill: Pick<Fill, 'density'>,
  lift: Metres,
  rules: PourRules = defaultPourRules,
): Pascals {
  const pressure = headPressure(fill.density, lift) * rules.loadFactor.value
  const span = Math.max(cavity.length, cavity.depth)
  const tension = stripTension(pressure, span, cavity.shell, 'supported') / rules.layerFactor.value
  return (tension / 1e6 / 0.252) ** 2 * 1e6
}
