import { nearestOnPath, type Path, pathPoint, pathTangent } from '../geometry/index.js'
import type { Opening, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { type CentrelinePiece, turnBetween } from './centreline.js'

/** A stretch of a wall with what belongs to it. */
export interface WallPart {
  readonly wall: Wall
  readonly from: Metres
  readonly to: Metres
  readonly pieces: readonly CentrelinePiece[]
  readonly openings: readonly Opening[]
}

/** A length of wall without a gap; `closed` when it runs into its own beginning. */
export interface Interval {
  readonly from: Metres
  readonly to: Metres
  readonly closed: boolean
  /** Once round, for a closed one. */
  readonly length: Metres
}

/** A wall turns a corner when it turns by this much or more; gentler bends do not hold it. */
const CORNER = Math.PI / 6

/** A return holds a wall when it is this many of its thicknesses long: common practice, no source. */
const RETURN_THICKNESSES = 2

/** The part minus the openings that are open somewhere between two heights. */
export function wholeIntervals(part: WallPart, bottom: Metres, top: Metres): readonly Interval[] {
  const gaps = part.openings
    .filter(({ sill, head }) => sill < top - 1e-6 && head > bottom + 1e-6)
    .map(({ at, width }) => [at - width / 2, at + width / 2] as const)
    .sort((a, b) => a[0] - b[0])
  const length = part.pieces[part.pieces.length - 1]!.to
  const round = part.wall.centreline.closed && part.from < 1e-6 && part.to > length - 1e-6
  if (gaps.length === 0) return [{ from: part.from, to: part.to, closed: round, length }]
  const edges = [part.from, ...gaps.flat(), part.to]
  const whole: Interval[] = []
  for (let i = 0; i < edges.length; i += 2) {
    const [from, to] = [Math.max(part.from, edges[i]!), Math.min(part.to, edges[i + 1]!)]
    if (to - from > 1e-3) whole.push({ from, to, closed: false, length })
  }
  return round ? joinedRound(whole, length) : whole
}

/** A closed wall has no end where its centreline happens to begin. */
function joinedRound(whole: readonly Interval[], length: Metres): readonly Interval[] {
  const first = whole.find(({ from }) => from < 1e-6)
  const last = whole.find(({ to }) => to > length - 1e-6)
  if (!first || !last || first === last) return whole
  const joined = { from: last.from, to: length + first.to, closed: false, length }
  return [...whole.filter(interval => interval !== first && interval !== last), joined]
}

/** Stations of an interval at which another leg of the section holds it, in order. */
export function supportStations(
  part: WallPart,
  interval: Interval,
  parts: readonly WallPart[],
  bottom: Metres,
  top: Metres,
): readonly Metres[] {
  const others = parts.filter(other => other.wall !== part.wall)
  const stations = [
    ...ownCorners(part, interval),
    ...others.flatMap(other => junctions(part, interval, other, bottom, top)),
  ].sort((a, b) => a - b)
  return stations.filter((station, i) => i === 0 || station - stations[i - 1]! > 0.01)
}

/** Corners of the wall's own centreline whose legs, both inside the interval, are long enough. */
function ownCorners({ wall, pieces }: WallPart, interval: Interval): readonly Metres[] {
  const least = RETURN_THICKNESSES * wall.thickness
  const laps = interval.to > interval.length + 1e-6 ? [0, interval.length] : [0]
  const corners: Metres[] = []
  pieces.forEach((piece, i) => {
    const before = pieces[i - 1] ?? (wall.centreline.closed ? pieces[pieces.length - 1] : undefined)
    if (!before || turnBetween(before.headingTo, piece.headingFrom) < CORNER) return
    for (const lap of laps) {
      const at = piece.from + lap
      const room = interval.closed ? interval.length : Math.min(at - interval.from, interval.to - at)
      const legs = Math.min(before.to - before.from, piece.to - piece.from, room)
      if (legs >= least - 1e-6) corners.push(at)
    }
  })
  return corners
}

/** Where another wall of the section meets this interval at an angle, with a leg that is whole at these heights. */
function junctions(
  part: WallPart,
  interval: Interval,
  other: WallPart,
  bottom: Metres,
  top: Metres,
): readonly Metres[] {
  const reach = (part.wall.thickness + other.wall.thickness) / 2
  const legs = wholeIntervals(other, bottom, top)
  const meets: Metres[] = []
  for (const station of endStations(other)) {
    const at = touchingStation(part.wall.centreline, other.wall.centreline, station, reach)
    if (at !== undefined && holds(part, at, other, station, legs)) meets.push(at)
  }
  for (const station of endStations(part)) {
    const at = touchingStation(other.wall.centreline, part.wall.centreline, station, reach)
    if (at !== undefined && holds(part, station, other, at, legs)) meets.push(station)
  }
  const inside = (at: Metres) => at > interval.from - reach && at < interval.to + reach
  return meets.filter(inside).map(at => Math.max(interval.from, Math.min(interval.to, at)))
}

const endStations = ({ wall, pieces }: WallPart): readonly Metres[] =>
  wall.centreline.closed ? [] : [0, pieces[pieces.length - 1]!.to]

function holds(
  part: WallPart,
  at: Metres,
  other: WallPart,
  otherAt: Metres,
  legs: readonly Interval[],
): boolean {
  const turn = turnBetween(headingAt(part.wall.centreline, at), headingAt(other.wall.centreline, otherAt))
  if (Math.min(turn, Math.PI - turn) < CORNER) return false
  const reach = (part.wall.thickness + other.wall.thickness) / 2
  return legs.some(
    ({ from, to }) =>
      otherAt > from - reach &&
      otherAt < to + reach &&
      Math.max(otherAt - from, to - otherAt) >= RETURN_THICKNESSES * other.wall.thickness - 1e-6,
  )
}

/** Where another centreline's station lies on this one, if within reach. */
function touchingStation(on: Path, of: Path, station: Metres, reach: Metres): Metres | undefined {
  const near = nearestOnPath(on, pathPoint(of, station))
  return near.distance <= reach ? near.station : undefined
}

function headingAt(path: Path, station: Metres): number {
  const [x, y] = pathTangent(path, station)
  return Math.atan2(y, x)
}
