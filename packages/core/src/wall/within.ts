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
  const inside = room.map(polygon => partsIn(paths, polygon))
  return paths.flatMap(path => {
    const parts = inside.flatMap(known => known.get(path) ?? [])
    return parts.includes(path) ? [path] : parts.filter(part => pathLength(part) > beadWidth)
  })
}

/** What of a path lies in a polygon: itself when it is all of it. */
type Parts = readonly Path[]

/** The bands of a section share most ties and most of the cavities they run in. */
const met = new WeakMap<Polygon, WeakMap<Path, Parts>>()

function partsIn(paths: readonly Path[], room: Polygon): Pick<WeakMap<Path, Parts>, 'get'> {
  const known = met.get(room) ?? new WeakMap<Path, Parts>()
  met.set(room, known)
  const unknown = paths.filter(path => !known.has(path))
  if (unknown.length === 0) return known
  const lines = unknown.map(path => flattenPath(path))
  const clipped = clipOpenLines(lines, [room], 'inside')
  unknown.forEach((path, i) => {
    const line = lines[i]!
    const whole = clipped.some(part => isWhole(part, line))
    known.set(path, whole ? [path] : cutTo(path, line, room))
  })
  return known
}

/** From end to end of the line and as long as it. */
const isWhole = (part: Line, line: Line): boolean =>
  distance(part[0]!, line[0]!) < 1e-8 &&
  distance(part.at(-1)!, line.at(-1)!) < 1e-8 &&
  Math.abs(lineLength(part) - lineLength(line)) < 1e-3

function cutTo(path: Path, line: Line, room: Polygon): Parts {
  const parts = clipOpenLines([line], [room], 'inside')
  const lost = lineLength(line) - parts.reduce((sum, part) => sum + lineLength(part), 0)
  return Math.abs(lost) < 1e-3 ? [path] : parts.map(part => fitArcs(part, false))
}

const lineLength = (line: Line): Metres =>
  line.slice(1).reduce((run, point, i) => run + distance(line[i]!, point), 0)
