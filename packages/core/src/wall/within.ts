import {
  clipOpenLines,
  distance,
  fitArcs,
  flattenPath,
  indexSegments,
  type Path,
  type Point,
  type Polygon,
  pathLength,
  polygonContains,
  polygonRings,
  type Region,
  ringSegments,
  type SegmentIndex,
} from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'

type Line = readonly Point[]

/** The paths where they stay in the room; whole when none leaves it. Scraps shorter than a bead are dropped. */
export function within(paths: readonly Path[], room: Region, beadWidth: Metres): readonly Path[] {
  const inside = room.map(polygon => partsIn(polygon, paths))
  return paths.flatMap(path => {
    const parts = inside.flatMap(known => known.get(path) ?? [])
    return parts.includes(path) ? [path] : parts.filter(part => pathLength(part) > beadWidth)
  })
}

/** What of a path lies in a polygon: itself when next to nothing is lost. */
type Parts = readonly Path[]

/** The bands of a section share most ties and most of the cavities they run in. */
const met = new WeakMap<Polygon, WeakMap<Path, Parts>>()

function partsIn(room: Polygon, paths: readonly Path[]): WeakMap<Path, Parts> {
  const known = met.get(room) ?? new WeakMap<Path, Parts>()
  met.set(room, known)
  const unknown = paths.filter(path => !known.has(path))
  if (unknown.length === 0) return known
  const edges = edgesOf(room)
  const crossing = unknown.filter(path => edges.meets(path))
  for (const path of unknown) known.set(path, polygonContains(room, path.points[0]!) ? [path] : [])
  for (const [path, parts] of clipped(crossing, room)) known.set(path, parts)
  return known
}

/** Most ties stay clear of the edges of their cavity; the engine is asked only of those that do not. */
function clipped(paths: readonly Path[], room: Polygon): readonly (readonly [Path, Parts])[] {
  const lines = paths.map(path => flattenPath(path))
  const parts = clipOpenLines(lines, [room], 'inside')
  const owners = parts.map(part => lines.filter(line => runsAlong(part, line)))
  // Where two lines run over each other a part may belong to either: asked one by one it cannot.
  const plain = owners.every(those => those.length === 1)
  return paths.map((path, i) => {
    const line = lines[i]!
    const own = plain
      ? parts.filter((_, k) => owners[k]![0] === line)
      : clipOpenLines([line], [room], 'inside')
    return [path, keptOf(path, line, own)]
  })
}

/** The edges of each cavity, indexed once. */
const indices = new WeakMap<Polygon, SegmentIndex>()

function edgesOf(room: Polygon): SegmentIndex {
  const known = indices.get(room) ?? indexSegments(polygonRings(room).flatMap(ringSegments))
  indices.set(room, known)
  return known
}

function keptOf(path: Path, line: Line, parts: readonly Line[]): Parts {
  const lost = lineLength(line) - parts.reduce((sum, part) => sum + lineLength(part), 0)
  return Math.abs(lost) < 1e-3 ? [path] : parts.map(part => fitArcs(part, false))
}

/** A part keeps the points of its line between its ends, which may be new; of one with no others both ends lie on the line. */
const runsAlong = (part: Line, line: Line): boolean =>
  part.length > 2
    ? line.some(point => near(part[1]!, point))
    : line.some((start, i) => part.every(point => awayFrom(start, line[i + 1] ?? start, point) < 1e-8))

/** But for the engine's rounding. */
const near = ([x, y]: Point, [u, v]: Point): boolean => Math.abs(x - u) < 1e-8 && Math.abs(y - v) < 1e-8

function awayFrom([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): Metres {
  const [u, v, p, q] = [bx - ax, by - ay, x - ax, y - ay]
  const square = u * u + v * v
  const share = square > 0 ? Math.min(1, Math.max(0, (u * p + v * q) / square)) : 0
  return Math.hypot(p - share * u, q - share * v)
}

const lineLength = (line: Line): Metres =>
  line.slice(1).reduce((run, point, i) => run + distance(line[i]!, point), 0)
