import type { Machine } from '../machine/index.js'
import type { CubicMetres, Metres } from '../quantity/index.js'
import {
  type LayerRoute,
  lengthwiseAcceleration,
  movesOf,
  type Pass,
  speedProfile,
  stopTurns,
} from '../route/index.js'
import { chainsOf } from './pump-chains.js'

type Laid = Pick<LayerRoute, 'passes' | 'travels' | 'volume'>

/**
 * Mix that the pump gives for one layer, after what trials have measured of the machine.
 *
 *   V = ( Σ A·L + Σ w·h·∫ ( (v₀/v)^s − 1 ) dx + Σ Q·(t₁ − t₂) ) / f
 *
 * A·L the beads as drawn; v₀ the speed the pump is set for and v the nozzle's on its ramps, s how corners swell; Q·(t₁ − t₂)
 * what is pumped ahead of each start less what runs out after the stop; f the share of the flow that becomes bead.
 *
 * Source   closed form: conservation of volume; s and f from the site's trials.
 * Range    s up to 1: no more can come out than is pumped. Not measured: s = 0, f = 1, no lags.
 * Assumes  the pump stops its lag ahead of the end, as the machine files have it; where the last piece is too short for
 *          that, the little that runs on is counted as run out all the same.
 */
export function pumpedVolume(route: Laid, machine: Machine): CubicMetres {
  const { laying } = machine
  if (!laying) return route.volume
  const chains = chainsOf(route)
  const swollen = laying.swelling ? sum(chains, chain => swellOf(chain, laying.swelling!, machine)) : 0
  const lagging = laying.lags ? sum(chains, chain => lagOf(chain, machine)) : 0
  return (route.volume + swollen + lagging) / (laying.fill ?? 1)
}

function lagOf(chain: readonly Pass[], machine: Machine): CubicMetres {
  const { startLag, stopLag } = machine.pump
  const first = chain[0]!
  // at a sharp corner the pump stops where the nozzle does, not ahead of it
  const corners = sum(
    chain,
    (pass, i) => pass.flow * startLag * stopTurns(pass, chain[i - 1], machine).length,
  )
  return first.flow * (startLag - stopLag) + corners
}

/** What a chain gets over its drawn section while the nozzle is slower than the pump is set for. */
function swellOf(chain: readonly Pass[], swelling: number, machine: Machine): CubicMetres {
  const power = Math.min(1, swelling)
  const moves = chain.map((pass, i) => movesOf(pass, chain[i + 1], chain[i - 1], machine))
  const all = moves.flat()
  const { ends, peaks } = speedProfile(all, machine)
  const sizes = chain.flatMap(({ width, height }, i) => moves[i]!.map(() => width * height))
  return sum(all, (move, i) => {
    const ramp = { set: move.speed, power, acceleration: lengthwiseAcceleration(move, machine) }
    // its last braking runs out without the pump; counted lags take it off again
    const isRunOut = i === all.length - 1 && !machine.laying?.lags
    const end = isRunOut ? machine.acceleration * machine.pump.stopLag : ends[i + 1]!
    const up = widened(ramp, ends[i]!, peaks[i]!)
    const down = widened(ramp, Math.min(end, peaks[i]!), peaks[i]!)
    return sizes[i]! * (up + down)
  })
}

interface Ramp {
  readonly set: number
  readonly power: number
  readonly acceleration: number
}

/** ∫ ((v₀/v)^s − 1) dx between two speeds, with dx = v·dv/a. */
function widened({ set, power, acceleration }: Ramp, slow: number, fast: number): Metres {
  const grown = (set ** power * (fast ** (2 - power) - slow ** (2 - power))) / (2 - power)
  return (grown - (fast ** 2 - slow ** 2) / 2) / acceleration
}

const sum = <T>(list: readonly T[], of: (each: T, index: number) => number): number =>
  list.reduce((total, each, index) => total + of(each, index), 0)
