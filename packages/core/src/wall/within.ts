import {
  clipOpenLines,
  distance,
  fitArcs,
  flattenPath,
  type Path,
  type Point,
  type Polygon,
  pathLength,
  type Region,
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
  const unknown = paths.filter(path => !known.has(path)).map(path => ({ path, line: flattenPath(path) }))
  const clipped = clipOpenLines(
    unknown.map(({ line }) => line),
    [room],
    'inside',
  )
  const owners = clipped.map(part => unknown.filter(({ line }) => runsAlong(part, line)))
  // Where two lines run over each other a part may belong to either: asked one by one it cannot.
  const plain = owners.every(those => those.length === 1)
  for (const each of unknown) {
    const parts = plain
      ? clipped.filter((_, i) => owners[i]![0] === each)
      : clipOpenLines([each.line], [room], 'inside')
    known.set(each.path, keptOf(each.path, each.line, parts))
  }
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
