import { type Path, pathLength, pathTangent, pointStations, turnBetween } from '../geometry/index.js'
import type { Metres, Radians } from '../quantity/index.js'
import { slack } from './parts.js'

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

/** How far before a corner the inner faces of a wall have met. */
export const innerReach = (thickness: Metres, turn: Radians): Metres =>
  (thickness / 2) * Math.tan(Math.min(1.5, Math.abs(turn) / 2))
