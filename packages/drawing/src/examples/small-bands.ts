import type { Path, Point, Polygon } from '@dawnlift/core/geometry'
import type { Job, Wall } from '@dawnlift/core/job'
import type { LayerRoute, SectionRoutes } from '@dawnlift/core/route'
import type { Section } from '@dawnlift/core/section'
import { placeAt } from '@dawnlift/core/trade'
import type { Band, Bead, SectionBands } from '@dawnlift/core/wall'

/** Beads and routes of straight double walls, enough to draw from; the pipeline makes the real ones. */
export function smallBands(job: Job, sections: readonly Section[]) {
  const top = Math.round(2.4 / job.print.layerHeight)
  const heights = [0, 0.9, 2.1, 2.3, 2.4]
  const cuts = heights.slice(1).map((height, index) => ({
    fromLayer: Math.round(heights[index]! / job.print.layerHeight) + 1,
    toLayer: Math.round(height / job.print.layerHeight),
    middle: (height + heights[index]!) / 2,
  }))
  const bands: SectionBands[] = sections.map(section => ({
    section: section.id,
    layers: top,
    volume: 0,
    bands: cuts.map(cut => bandOf(job, section, cut)),
  }))
  const routes: SectionRoutes[] = bands.map(section => ({
    section: section.section,
    routes: section.bands.flatMap(band => [
      routeOf(section.section, band, 1),
      routeOf(section.section, band, 0),
    ]),
  }))
  return { bands, routes }
}

function bandOf(
  job: Job,
  section: Section,
  cut: { fromLayer: number; toLayer: number; middle: number },
): Band {
  const pieces = section.stretches.flatMap(stretch => {
    const wall = job.walls.find(candidate => candidate.id === stretch.wall)!
    return solidParts(job, wall, cut.middle).map(([from, to]) => ({ wall, from, to }))
  })
  return {
    fromLayer: cut.fromLayer,
    toLayer: cut.toLayer,
    body: pieces.map(({ wall, from, to }) => bodyOf(wall, from, to)),
    bodyArea: pieces.reduce((sum, piece) => sum + (piece.to - piece.from) * piece.wall.thickness, 0),
    beads: pieces.flatMap(({ wall, from, to }, index) =>
      beadsOf(job, wall, from, to, `${section.id}.${cut.fromLayer}.${index}`),
    ),
    thinPlaces: [],
  }
}

/** What is left of a wall between its openings at a height. */
function solidParts(job: Job, wall: Wall, height: number): (readonly [number, number])[] {
  const length = Math.hypot(
    wall.centreline.points[1]![0] - wall.centreline.points[0]![0],
    wall.centreline.points[1]![1] - wall.centreline.points[0]![1],
  )
  const holes = job.openings
    .filter(o => o.wall === wall.id && o.sill < height && height < o.head + (o.lintel?.height ?? 0))
    .sort((a, b) => a.at - b.at)
  // Walls run from outer corner to inner corner, so that at a corner they meet without overlapping.
  const parts: (readonly [number, number])[] = []
  let from = wall.thickness / 2
  for (const hole of holes) {
    parts.push([from, hole.at - hole.width / 2])
    from = hole.at + hole.width / 2
  }
  return [...parts, [from, length + wall.thickness / 2]]
}

function across(wall: Wall, station: number, aside: number): Point {
  const { point, heading } = placeAt(wall.centreline, station)
  return [point[0] - aside * Math.sin(heading), point[1] + aside * Math.cos(heading)]
}

function bodyOf(wall: Wall, from: number, to: number): Polygon {
  const half = wall.thickness / 2
  return {
    outer: [
      across(wall, from, -half),
      across(wall, to, -half),
      across(wall, to, half),
      across(wall, from, half),
    ],
    holes: [],
  }
}

function beadsOf(job: Job, wall: Wall, from: number, to: number, id: string): Bead[] {
  const { beadWidth, layerHeight } = job.print
  const half = wall.thickness / 2 - beadWidth / 2
  const [near, far] = [from + beadWidth / 2, to - beadWidth / 2]
  const loop: Path = {
    points: [
      across(wall, near, -half),
      across(wall, far, -half),
      across(wall, far, half),
      across(wall, near, half),
    ],
    bulges: [0, 0, 0, 0],
    closed: true,
  }
  const turns = Math.max(2, Math.round((far - near) / 0.25))
  const inner = half - beadWidth
  const points = Array.from({ length: turns + 1 }, (_, index) =>
    across(wall, near + ((far - near) * index) / turns, index % 2 ? inner : -inner),
  )
  const web: Path = { points, bulges: points.slice(1).map(() => 0), closed: false }
  return [
    { id: `${id}.w`, role: 'wythe', path: loop, width: beadWidth, height: layerHeight },
    { id: `${id}.t`, role: 'web', path: web, width: beadWidth, height: layerHeight },
  ]
}

function routeOf(section: string, band: Band, parity: 0 | 1): LayerRoute {
  const order = parity === 1 ? band.beads : [...band.beads].reverse()
  let at: Point = order[0]!.path.points[0]!
  const travels = order.map(bead => {
    const from = at
    const to = bead.path.points[0]!
    at = bead.path.closed ? to : bead.path.points.at(-1)!
    return { from, to, lift: 0.1, time: Math.hypot(to[0] - from[0], to[1] - from[1]) / 0.4, turn: 0 }
  })
  const passes = order.map(bead => {
    const length = lengthOf(bead.path)
    const segments = bead.path.bulges.length
    return {
      bead: bead.id,
      path: bead.path,
      width: bead.width,
      height: bead.height,
      length,
      volume: length * bead.width * bead.height,
      flow: 0.00025,
      speeds: Array.from({ length: segments }, () => 0.2),
      time: length / 0.2,
      headings: Array.from({ length: segments + 1 }, () => 0),
    }
  })
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)
  return {
    section,
    fromLayer: band.fromLayer,
    toLayer: band.toLayer,
    parity,
    passes,
    travels,
    printTime: sum(passes.map(pass => pass.time)),
    travelTime: sum(travels.map(travel => travel.time)),
    length: sum(passes.map(pass => pass.length)),
    volume: sum(passes.map(pass => pass.volume)),
  }
}

function lengthOf(path: Path): number {
  const points = path.closed ? [...path.points, path.points[0]!] : path.points
  return points
    .slice(1)
    .reduce((sum, to, i) => sum + Math.hypot(to[0] - points[i]![0], to[1] - points[i]![1]), 0)
}
