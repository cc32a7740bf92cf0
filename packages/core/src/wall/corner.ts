import { type Path, pathLength, pathTangent, pointStations, turnBetween } from '../geometry/index.js'
import type { PrintRules } from '../job/index.js'
import type { Metres, Radians } from '../quantity/index.js'
import { contactLap, slack, tieSetback } from './parts.js'

/** Where a centreline turns; the start of a closed one is at its end, too. */
export interface Corner {
  readonly station: Metres
  /** Left positive. */
  readonly turn: Radians
}

/** The corners of a centreline that turn by at least so much; ends are none. */
export function cornersOf(centreline: Path, least: Radians): readonly Corner[] {
  const length = pathLength(centreline)
  return pointStations(centreline)
    .filter(station => centreline.closed || (station >= slack && station <= length - slack))
    .map(station => {
      const [before, after] = [station < slack ? length - 1e-9 : station - 1e-9, station + 1e-9]
      const next = after > length ? 1e-9 : after
      return { station, turn: turnBetween(pathTangent(centreline, before), pathTangent(centreline, next)) }
    })
    .filter(({ turn }) => Math.abs(turn) >= least)
}

/** Least lap of a tie's end onto a wythe that swings away from it round an inside corner, as a share of the full lap. */
const leastEndLap = 0.4

/**
 * How far past the meeting of two faces, which open by an angle φ, a tie has to start so that its end still laps onto the
 * wythe: inside corners are rounded, and the more the sharper they are.
 *
 *   s = r/tan(φ/2) − √((r + 1.5·w − lap)² − (r + d)²)      r of the face, w the bead, d from the face to the tie
 *
 * From the distance of the tie's end to the centre of the rounding, which lies r/tan(φ/2) along and r beyond the face.
 */
export function tieStart(opening: Radians, print: PrintRules): Metres {
  const { beadWidth, cornerRadius } = print
  const radius = Math.max(0, cornerRadius - beadWidth / 2)
  if (radius === 0 || opening < 0.05) return 0
  const touch = radius + 1.5 * beadWidth - leastEndLap * contactLap(print)
  const bridged = Math.sqrt(Math.max(0, touch ** 2 - (radius + tieSetback(print)) ** 2))
  return Math.max(0, radius / Math.tan(opening / 2) - bridged)
}

/** How far before a corner the inner faces of a wall have met. */
export const innerReach = (thickness: Metres, turn: Radians): Metres =>
  (thickness / 2) * Math.tan(Math.min(1.5, Math.abs(turn) / 2))
