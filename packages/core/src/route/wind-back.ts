import type { Path, Point } from '../geometry/index.js'
import type { Machine } from '../machine/index.js'
import type { Radians } from '../quantity/index.js'
import { isSharp } from './heading.js'
import { segmentsOf } from './segment.js'

/** A bead whose heading needs more than the axis has: where the nozzle stops inside it to turn back. */
export interface WoundBead {
  readonly bead: string
  /** From the least to the greatest heading without turning back [rad]. */
  readonly span: Radians
  readonly stops: readonly Point[]
  /** Even turning back does not help: half a turn alone is more than the axis has. */
  readonly impossible: boolean
}

/** Headings with whole turns taken back where they would pass the stops of the axis, and at which pieces. */
export interface WoundBack {
  readonly headings: readonly Radians[]
  readonly pieces: readonly number[]
  readonly impossible: boolean
}

/**
 * Runs along a path and turns back by a whole turn before a piece that would pass a stop of the axis; at an earlier
 * sharp corner if there is one, where the nozzle rests anyway.
 */
export function windBack(path: Path, headings: readonly Radians[], machine: Machine): WoundBack {
  const sweeps = segmentsOf(path).map(segment => segment.sweep)
  const wound = firstTurn(headings, sweeps, machine)
  const pieces: number[] = []
  let impossible = false
  for (let i = 0; i < sweeps.length; i++) {
    const over = overrun(wound[i]!, sweeps[i]!, machine)
    if (over === 0) continue
    const shift = -Math.sign(over) * 2 * Math.PI
    const at = placeToTurn(wound, sweeps, pieces.at(-1) ?? 0, i, shift, machine)
    for (let k = at; k < wound.length; k++) wound[k] = wound[k]! + shift
    if (overrun(wound[i]!, sweeps[i]!, machine) !== 0) impossible = true
    pieces.push(at)
  }
  return { headings: wound, pieces, impossible }
}

/** The whole bead by whole turns, so that it begins as far from the stop it runs towards as it can. */
function firstTurn(headings: readonly Radians[], sweeps: readonly number[], machine: Machine): Radians[] {
  const turn = 2 * Math.PI * Math.round(headings[0]! / (2 * Math.PI))
  const wound = headings.map(heading => heading - turn)
  const over = overrun(wound[0]!, sweeps[0]!, machine)
  return over === 0 ? wound : wound.map(heading => heading - Math.sign(over) * 2 * Math.PI)
}

/** How far a piece runs past a stop of the axis; positive past the left one. */
function overrun(heading: Radians, sweep: Radians, { headingTravel }: Machine): number {
  const [low, high] = sweep < 0 ? [heading + sweep, heading] : [heading, heading + sweep]
  if (high > headingTravel + 1e-9) return high - headingTravel
  return low < -headingTravel - 1e-9 ? low + headingTravel : 0
}

/** The last sharp corner since the last turn back from which the pieces up to here fit; none: here. */
function placeToTurn(
  wound: readonly Radians[],
  sweeps: readonly number[],
  since: number,
  i: number,
  shift: number,
  machine: Machine,
): number {
  for (let k = i; k > since; k--) {
    if (overrun(wound[k]! + shift, sweeps[k]!, machine) !== 0) return i
    if (isSharp(wound[k]! - wound[k - 1]! - sweeps[k - 1]!)) return k
  }
  return i
}
