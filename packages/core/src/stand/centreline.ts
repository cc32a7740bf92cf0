import { arcOf, isStraight, type Path, segmentLength, segmentsOf, segmentTangent } from '../geometry/index.js'
import type { Metres, Radians } from '../quantity/index.js'

/** One line or arc of a wall's centreline with its stations. */
export interface CentrelinePiece {
  readonly from: Metres
  readonly to: Metres
  /** Heading at both ends. */
  readonly headingFrom: Radians
  readonly headingTo: Radians
  /** Of an arc; none: straight. */
  readonly radius?: Metres
  /** 1 turning left, −1 right, 0 straight. */
  readonly turns: number
}

export function centrelinePieces(path: Path): readonly CentrelinePiece[] {
  let station = 0
  return segmentsOf(path).map(segment => {
    const from = station
    station += segmentLength(segment)
    const heading = (share: number) => {
      const [x, y] = segmentTangent(segment, share)
      return Math.atan2(y, x)
    }
    const straight = isStraight(segment)
    return {
      from,
      to: station,
      headingFrom: heading(0),
      headingTo: heading(1),
      ...(straight ? {} : { radius: arcOf(segment).radius }),
      turns: straight ? 0 : Math.sign(segment.bulge),
    }
  })
}

/** Difference of two headings, 0 … π. */
export function turnBetween(a: Radians, b: Radians): Radians {
  const turn = Math.abs(a - b) % (2 * Math.PI)
  return turn > Math.PI ? 2 * Math.PI - turn : turn
}
