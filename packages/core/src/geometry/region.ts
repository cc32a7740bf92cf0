import type { Metres } from '../quantity/index.js'
import { polygonEngine, readPaths, toEngine, withHandles, writePaths } from './engine.js'
import { chordTolerance } from './flatten.js'
import type { Point, Polygon } from './path.js'
import { nestRings, type Ring, regionRings, tidyRing } from './ring.js'
import { shrunkPolygon } from './shrinks-whole.js'

/** A set of polygons that do not overlap. */
export type Region = readonly Polygon[]

/** How an offset turns a corner; a mitre further than `mitreLimit` distances out is squared off. */
export type Join = 'mitre' | 'round' | 'square'
export type Ends = 'butt' | 'round' | 'square'

/** Points that stand out less than this from their neighbours' line carry no shape: the engine's rounding. */
const flatness: Metres = 3e-8
const mitreLimit = 4

/** Everything covered by any of the rings, whichever way they run. */
export const unionRings = (rings: readonly Ring[]): Region =>
  combine('Union', rings.map(counterClockwise), [])
export const union = (...regions: readonly Region[]): Region =>
  combine('Union', regions.flatMap(regionRings), [])
export const difference = (from: Region, ...taken: readonly Region[]): Region =>
  combine('Difference', regionRings(from), taken.flatMap(regionRings))
export const intersection = (a: Region, b: Region): Region =>
  combine('Intersection', regionRings(a), regionRings(b))

/** The region grown by a distance all round. */
export const inflate = (region: Region, by: Metres, join: Join): Region => offset(region, by, join)
/** The region shrunk by a distance all round; parts thinner than twice the distance vanish. */
export const inset = (region: Region, by: Metres, join: Join): Region =>
  join === 'square'
    ? region.flatMap(polygon => shrunkPolygon(polygon, by, join) ?? offset([polygon], -by, join))
    : offset(region, -by, join)

/** The area a round or straight-edged pen of a width covers along open lines, overlaps counted once. */
export function stroke(
  lines: readonly (readonly Point[])[],
  width: Metres,
  ends: Ends,
  join: Join = 'round',
  tolerance: Metres = chordTolerance,
): Region {
  if (lines.length === 0) return []
  return withHandles(keep => {
    const { EndType } = polygonEngine()
    const end = { butt: EndType.Butt, round: EndType.Round, square: EndType.Square }[ends]
    return readRegion(keep(grow(keep(writePaths(lines)), width / 2, join, end, tolerance)))
  })
}

/** The parts of open lines inside (or outside) a region, each running the way its line ran. */
export function clipOpenLines(
  lines: readonly (readonly Point[])[],
  region: Region,
  keepPart: 'inside' | 'outside',
): readonly (readonly Point[])[] {
  if (lines.length === 0) return []
  if (region.length === 0) return keepPart === 'inside' ? [] : lines
  return withHandles(keep => {
    const { ClipperD, ClipType, FillRule, PathsD } = polygonEngine()
    const clipper = keep(new ClipperD(0))
    clipper.AddOpenSubject(keep(writePaths(lines)))
    clipper.AddClip(keep(writePaths(regionRings(region))))
    const [closed, open] = [keep(new PathsD()), keep(new PathsD())]
    const how = keepPart === 'inside' ? ClipType.Intersection : ClipType.Difference
    clipper.ExecutePath(how, FillRule.NonZero, closed, open)
    return readPaths(open)
  })
}

function combine(
  clip: 'Union' | 'Difference' | 'Intersection',
  subjects: readonly Ring[],
  clips: readonly Ring[],
) {
  if (subjects.length === 0) return []
  return withHandles(keep => {
    const { BooleanOpD, ClipType, FillRule } = polygonEngine()
    const [from, by] = [keep(writePaths(subjects)), keep(writePaths(clips))]
    return readRegion(keep(BooleanOpD(ClipType[clip], FillRule.NonZero, from, by, 0)))
  })
}

function offset(region: Region, by: Metres, join: Join): Region {
  if (region.length === 0 || by === 0) return region
  return withHandles(keep => {
    const { EndType } = polygonEngine()
    return readRegion(
      keep(grow(keep(writePaths(regionRings(region))), by, join, EndType.Polygon, chordTolerance)),
    )
  })
}

function grow(paths: ReturnType<typeof writePaths>, by: Metres, join: Join, end: unknown, tolerance: Metres) {
  const { InflatePathsD, JoinType } = polygonEngine()
  const joins = { mitre: JoinType.Miter, round: JoinType.Round, square: JoinType.Square }
  return InflatePathsD(paths, toEngine(by), joins[join], end, mitreLimit, 0, toEngine(tolerance))
}

const readRegion = (paths: ReturnType<typeof writePaths>): Region =>
  nestRings(
    readPaths(paths)
      .map(ring => tidyRing(ring, flatness))
      .filter(ring => ring.length > 2),
  )

function counterClockwise(ring: Ring): Ring {
  let twice = 0
  ring.forEach(([x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length]!
    twice += x * v - u * y
  })
  return twice < 0 ? [...ring].reverse() : ring
}
