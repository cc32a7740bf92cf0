import {
  difference,
  distance,
  inflate,
  intersection,
  nearestOnPath,
  type Point,
  type Polygon,
  pointBounds,
  polygonArea,
  polygonCentroid,
  type Region,
} from '../geometry/index.js'
import type { Wall } from '../job/index.js'
import { formatPlace, type Metres } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import type { Section } from '../section/index.js'
import { sectionBody } from './body.js'
import { sayThickness } from './check-words.js'
import { findJunctions, type Junction, junctionTolerance } from './junction.js'
import { type OwnBrush, ownBrushes } from './own-brushes.js'
import type { WallParts } from './parts.js'
import { patchWidth } from './patch-width.js'
import { stretchesOfWholePlan } from './section-plan.js'

/** A wall as if it stood alone, uncut and with sharp corners. */
interface Lone {
  readonly wall: Wall
  readonly body: Region
  readonly least: Point
  readonly most: Point
}

/**
 * Walls that touch or lie over each other, or over themselves, away from where they meet. In one section their beads run
 * together untied, in two they are printed twice.
 */
export function checkBrushes(parts: WallParts, sections: readonly Section[]): readonly Finding[] {
  const junctions = findJunctions(parts.walls)
  const lone = parts.walls.map(wall => aloneOf(parts, wall))
  return lone.flatMap((one, i) => [
    ...lone.slice(0, i).flatMap(other => {
      if (!comeNear(one, other)) return []
      const places = brushesOf(one, other, lone, junctions)
      return places.map(place => pairFinding(parts, sections, other.wall, one.wall, place))
    }),
    ...ownBrushes(one.wall).map(brush => ownFinding(parts, sections, one.wall, brush)),
  ])
}

function aloneOf(parts: WallParts, wall: Wall): Lone {
  const sharp = { ...parts.print, cornerRadius: 0 }
  const alone = { ...parts, walls: [wall], openings: [], embeds: [], print: sharp }
  const section = { id: wall.id, stretches: stretchesOfWholePlan([wall]), joints: [] }
  const body = sectionBody(alone, section, wall.base + parts.print.layerHeight / 2)
  return { wall, body, ...pointBounds(body.flatMap(({ outer }) => outer)) }
}

const comeNear = (a: Lone, b: Lone): boolean =>
  a.wall.base < b.wall.top &&
  b.wall.base < a.wall.top &&
  [0, 1].every(
    axis =>
      a.least[axis]! < b.most[axis]! + junctionTolerance &&
      b.least[axis]! < a.most[axis]! + junctionTolerance,
  )

/** What two walls share, less what lies about a junction of both, or within a third wall that meets both. */
function brushesOf(one: Lone, other: Lone, all: readonly Lone[], junctions: readonly Junction[]): Region {
  const both = intersection(one.body, inflate(other.body, junctionTolerance, 'mitre'))
  if (both.length === 0) return []
  const meets = (a: Wall, b: Wall) =>
    junctions.filter(({ arms }) => [a, b].every(wall => arms.some(arm => arm.wall === wall)))
  const shared = meets(one.wall, other.wall)
  const near = 1.5 * (one.wall.thickness + other.wall.thickness)
  const between = all.filter(
    ({ wall }) =>
      wall !== one.wall &&
      wall !== other.wall &&
      meets(wall, one.wall).length > 0 &&
      meets(wall, other.wall).length > 0,
  )
  const rest = between.reduce<Region>(
    (left, { body }) => (left.length > 0 ? difference(left, body) : left),
    both,
  )
  return rest.filter(
    polygon =>
      polygonArea(polygon) > junctionTolerance ** 2 &&
      polygon.outer.some(corner => shared.every(({ point }) => distance(point, corner) > near)),
  )
}

function pairFinding(
  parts: WallParts,
  sections: readonly Section[],
  a: Wall,
  b: Wall,
  place: Polygon,
): Finding {
  const point = polygonCentroid(place)
  const [first, second] = [a, b].map(wall =>
    sectionAt(sections, wall, nearestOnPath(wall.centreline, point).station),
  )
  return brushFinding(parts, place, Math.min(a.thickness, b.thickness), {
    at: `walls ${a.id} and ${b.id}`,
    what: `Walls ${a.id} and ${b.id}`,
    inSections: [first, second],
    help: 'Move one of them, or draw one on to the other’s centreline.',
  })
}

function ownFinding(parts: WallParts, sections: readonly Section[], wall: Wall, brush: OwnBrush): Finding {
  return brushFinding(parts, brush.place, wall.thickness, {
    at: `wall ${wall.id}`,
    what: `Two legs of wall ${wall.id}`,
    inSections: brush.stations.map(station => sectionAt(sections, wall, station)),
    help: 'Draw them further apart.',
  })
}

interface Brush {
  readonly at: string
  readonly what: string
  readonly inSections: readonly (string | undefined)[]
  readonly help: string
}

function brushFinding(
  { units = 'metric' }: WallParts,
  place: Polygon,
  thickness: Metres,
  { at, what, inSections: [first, second], help }: Brush,
): Finding {
  const point = polygonCentroid(place)
  const depth = Math.max(0, patchWidth([place], thickness) - junctionTolerance)
  const isTwice = first !== second
  const found = depth < 5e-4 ? 'touch' : `lie up to ${sayThickness(depth, units)} inside each other`
  const follows = isTwice
    ? `sections ${first} and ${second} both print there`
    : 'their beads run into each other, untied'
  return {
    check: 'walls-brush',
    at,
    point,
    demand: depth * 1000,
    capacity: 0,
    unit: 'mm',
    source: 'the job',
    verdict: isTwice ? 'fail' : 'warn',
    say: `${what} ${found} at ${formatPlace(point, units)}, away from where they meet: ${follows}. ${help}`,
  }
}

const sectionAt = (sections: readonly Section[], { id }: Wall, station: Metres): string | undefined =>
  sections.find(({ stretches }) =>
    stretches.some(({ wall, from, to }) => wall === id && from - 1e-6 < station && station < to + 1e-6),
  )?.id
