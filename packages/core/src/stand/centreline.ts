import type { Path, Point } from '../geometry/index.js'
import type { Metres, Radians } from '../quantity/index.js'

/** One line or arc of a wall's centreline with its stations. */
export interface CentrelinePiece {
  readonly from: Metres
  readonly to: Metres
  readonly start: Point
  readonly end: Point
  /** Heading at both ends. */
  readonly headingFrom: Radians
  readonly headingTo: Radians
  /** Of an arc; none: straight. */
  readonly radius?: Metres
  readonly bulge: number
}

export function centrelinePieces({ points, bulges, closed }: Path): readonly CentrelinePiece[] {
  const pieces: CentrelinePiece[] = []
  let station = 0
  const count = closed ? points.length : points.length - 1
  for (let i = 0; i < count; i++) {
    const piece = pieceBetween(points[i]!, points[(i + 1) % points.length]!, bulges[i] ?? 0, station)
    pieces.push(piece)
    station = piece.to
  }
  return pieces
}

function pieceBetween(start: Point, end: Point, bulge: number, from: Metres): CentrelinePiece {
  const chord = Math.hypot(end[0] - start[0], end[1] - start[1])
  const heading = Math.atan2(end[1] - start[1], end[0] - start[0])
  if (Math.abs(bulge) < 1e-9)
    return { from, to: from + chord, start, end, headingFrom: heading, headingTo: heading, bulge: 0 }
  const angle = 4 * Math.atan(bulge)
  const radius = chord / (2 * Math.abs(Math.sin(angle / 2)))
  return {
    from,
    to: from + radius * Math.abs(angle),
    start,
    end,
    headingFrom: heading - angle / 2,
    headingTo: heading + angle / 2,
    radius,
    bulge,
  }
}

/** Point of the centreline at a station, held inside its ends. */
export function centrelinePoint(pieces: readonly CentrelinePiece[], station: Metres): Point {
  const piece = pieces.find(({ to }) => station <= to) ?? pieces[pieces.length - 1]!
  const share = Math.max(0, Math.min(1, (station - piece.from) / (piece.to - piece.from)))
  const along = (share * (piece.to - piece.from)) as number
  if (piece.radius === undefined)
    return [
      piece.start[0] + along * Math.cos(piece.headingFrom),
      piece.start[1] + along * Math.sin(piece.headingFrom),
    ]
  const turn = (Math.sign(piece.bulge) * along) / piece.radius
  const chord = 2 * piece.radius * Math.sin(Math.abs(turn) / 2)
  const heading = piece.headingFrom + turn / 2
  return [piece.start[0] + chord * Math.cos(heading), piece.start[1] + chord * Math.sin(heading)]
}

/** Difference of two headings, 0 … π. */
export function turnBetween(a: Radians, b: Radians): Radians {
  const turn = Math.abs(a - b) % (2 * Math.PI)
  return turn > Math.PI ? 2 * Math.PI - turn : turn
}
