import type { CubicMetresPerSecond, Pascals } from '../quantity/index.js'
import { assert } from '../result/index.js'
import { type Hose, type ShearedMix, wallStress } from './bingham-pipe.js'

/** The layer of paste on the hose wall: yield stress [Pa] and viscous constant [Pa·s/m], by tribometer or pump trial. */
export interface SlipLayer {
  readonly yield: Pascals
  readonly viscosity: number
}

/**
 * Pressure drop [Pa] of a flow that slips on a layer of paste, and shears the mix only where the wall stress passes its
 * yield stress. With q = Q/(πR²):
 *
 *   plug      P = (2L/R)·(τi + η·q)
 *   shearing  P = (2L/R)·[ τi + η·(q − R·τi/(4µ) + R·τ₀/(3µ)) / (1 + R·η/(4µ)) ]
 *
 * @param hose  length and inside diameter [m]
 * @param slip  yield stress τi [Pa] and viscous constant η [Pa·s/m] of the layer
 * @param mix   yield stress τ₀ [Pa] and plastic viscosity µ [Pa·s] of the mix in motion
 * @param flow  Q [m³/s]
 *
 * Source   [Kaplan2000], from memory; re-derived as slip plus the first two terms of Bingham flow: identical.
 * Range    steady flow in a filled hose; near τw = τ₀ the missing fourth-power term makes it a little low.
 * Assumes  the layer has formed: a dry or unprimed hose has none.
 */
export function lubricatedPressure(
  hose: Hose,
  slip: SlipLayer,
  mix: ShearedMix,
  flow: CubicMetresPerSecond,
): Pascals {
  assert(flow > 0, 'a pressure belongs to a flow')
  const radius = hose.diameter / 2
  const speed = flow / (Math.PI * radius ** 2)
  const plug = ((2 * hose.length) / radius) * (slip.yield + slip.viscosity * speed)
  if (wallStress(hose, plug) <= mix.yield) return plug
  const sheared =
    speed - (radius * slip.yield) / (4 * mix.viscosity) + (radius * mix.yield) / (3 * mix.viscosity)
  const shared = 1 + (radius * slip.viscosity) / (4 * mix.viscosity)
  return ((2 * hose.length) / radius) * (slip.yield + (slip.viscosity * sheared) / shared)
}
