import type { Instant, Seconds, SquareMetres } from '../quantity/index.js'
import type { WallHeat } from './wall-trace.js'

/** One round with the hose: both faces that are due, taken together. */
export interface Wetting {
  readonly at: Instant
  readonly litres: number
}

/**
 * When to wet the cloth again and with how much, for a lift of this face area on each side.
 *
 * A round is set when the first face falls due; the other is topped up on the same walk. A tenth more than has dried runs off.
 */
export function wettingRounds(
  heat: WallHeat,
  area: { readonly left: SquareMetres; readonly right: SquareMetres },
  from: Instant,
  until: Instant,
): readonly Wetting[] {
  const rounds: { at: Instant; litres: number }[] = []
  for (const { at, side, water } of heat.rewettings) {
    if (at < from || at >= until) continue
    const litres = 1.1 * water * area[side]
    const last = rounds.at(-1)
    if (last && at === last.at) last.litres += litres
    else rounds.push({ at, litres })
  }
  return rounds
}

/** Shortest time between two rounds [s]; none with fewer than two. */
export function shortestRound(rounds: readonly Wetting[]): Seconds | undefined {
  const gaps = rounds.slice(1).map((round, index) => round.at - rounds[index]!.at)
  return gaps.length > 0 ? Math.min(...gaps) : undefined
}
