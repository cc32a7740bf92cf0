import type { Path } from '../geometry/index.js'
import type { Machine } from '../machine/index.js'
import type { Radians } from '../quantity/index.js'
import { type Segment, segmentsOf, wrapped } from './segment.js'
import { sharpTurn } from './velocity.js'

/**
 * Heading at the start of each piece and at the end, unwrapped: every turn at a corner is the shorter one.
 * Straight back, either way is as short: the one that winds towards home is taken.
 */
export function unwrappedHeadings(path: Path, near: Radians): Radians[] {
  const headings: Radians[] = []
  let at = near
  for (const segment of segmentsOf(path)) {
    const start = at + shortestTurn(at, segment.heading)
    headings.push(start)
    at = start + segment.sweep
  }
  return [...headings, at]
}

/** Rotation from a wound heading to a direction. */
export function shortestTurn(from: Radians, to: Radians): Radians {
  const turn = wrapped(to - from)
  if (Math.PI - Math.abs(turn) > 1e-6) return turn
  return from > 0 ? -Math.abs(turn) : Math.abs(turn)
}

/** Least and greatest heading the axis passes through on paths run one after another. */
export function headingRange(
  runs: readonly { readonly path: Path; readonly headings: readonly Radians[] }[],
): readonly [Radians, Radians] {
  let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  const note = (heading: Radians) => {
    least = Math.min(least, heading)
    greatest = Math.max(greatest, heading)
  }
  for (const { path, headings } of runs) {
    for (const heading of headings) note(heading)
    segmentsOf(path).forEach((segment, i) => {
      note(headings[i]! + segment.sweep)
    })
  }
  return [least, greatest]
}

/**
 * Whole turns to add to a chain so that its axis stays within its travel, as near as possible to where it is now.
 * `undefined`: no number of turns does.
 */
export function turnsToFit(
  range: readonly [Radians, Radians],
  start: Radians,
  now: Radians,
  machine: Machine,
): number | undefined {
  const whole = 2 * Math.PI
  const wished = Math.round((now - start) / whole)
  if (machine.headingRate === 0) return wished
  // a billionth of a turn over the stop is rounding
  const least = Math.ceil((-machine.headingTravel - range[0]) / whole - 1e-9)
  const most = Math.floor((machine.headingTravel - range[1]) / whole + 1e-9)
  if (least > most) return undefined
  return Math.min(most, Math.max(least, wished))
}

/**
 * Heading each piece ends at as the machine runs it. Small turns at a corner are made along the piece before it;
 * a sharp one is made at rest, after the piece. `next` is the heading of a pass that follows without a stop.
 */
export const headingTargets = (path: Path, headings: readonly Radians[], next?: Radians): Radians[] =>
  segmentsOf(path).map((segment, i) => headingTarget(segment, headings, i, next))

/** The same for one piece. */
export function headingTarget(
  segment: Segment,
  headings: readonly Radians[],
  i: number,
  next?: Radians,
): Radians {
  const own = headings[i]! + segment.sweep
  // the last heading is the end of the last piece, not the start of another
  const following = i + 2 < headings.length ? headings[i + 1]! : (next ?? own)
  return isSharp(following - own) ? own : following
}

export const isSharp = (turn: Radians): boolean => Math.abs(turn) > sharpTurn
