import {
  difference,
  distance,
  inflate,
  intersection,
  nearestOnPath,
  type Point,
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

/** Walls that touch or lie over each other away from where they meet. In one section their beads run together untied, in two they are printed twice. */
export function checkBrushes(parts: WallParts, sections: readonly Section[]): readonly Finding[] {
  const junctions = findJunctions(parts.walls)
  const lone = parts.walls.map(wall => aloneOf(parts, wall))
  return lone.flatMap((one, i) =>
    lone.slice(0, i).flatMap(other => {
      if (!comeNear(one, other)) return []
      return brushesOf(one, other, lone, junctions).map(place =>
        brushFinding(parts, sections, other, one, place),
      )
    }),
  )
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

function brushFinding(
  { units = 'metric' }: WallParts,
  sections: readonly Section[],
  { wall: a }: Lone,
  { wall: b }: Lone,
  place: Region[number],
): Finding {
  const point = polygonCentroid(place)
  const depth = Math.max(0, patchWidth([place], Math.min(a.thickness, b.thickness)) - junctionTolerance)
  const [first, second] = [a, b].map(wall => sectionAt(sections, wall, point))
  const isTwice = first !== second
  const found = depth < 5e-4 ? 'touch' : `lie up to ${sayThickness(depth, units)} inside each other`
  const follows = isTwice
    ? `sections ${first} and ${second} both print there`
    : 'their beads run into each other, untied'
  return {
    check: 'walls-brush',
    at: `walls ${a.id} and ${b.id}`,
    point,
    demand: depth * 1000,
    capacity: 0,
    unit: 'mm',
    source: 'the job',
    verdict: isTwice ? 'fail' : 'warn',
    say: `Walls ${a.id} and ${b.id} ${found} at ${formatPlace(point, units)}, away from where they meet: ${follows}. Move one of them, or draw one on to the other’s centreline.`,
  }
}

function sectionAt(sections: readonly Section[], { id, centreline }: Wall, point: Point): string | undefined {
  const { station } = nearestOnPath(centreline, point)
  const away = (from: Metres, to: Metres) => Math.max(from - station, station - to, 0)
  return sections.find(({ stretches }) =>
    stretches.some(({ wall, from, to }) => wall === id && away(from, to) < 1e-6),
  )?.id
}
