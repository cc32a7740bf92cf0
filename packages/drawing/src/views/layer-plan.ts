import { nearestOnPath, type Point, pathBounds } from '@dawnlift/core/geometry'
import type { Embed } from '@dawnlift/core/job'
import type { Plan } from '@dawnlift/core/plan'
import { type Bead, embedAt } from '@dawnlift/core/wall'

import {
  boundsOf,
  type Drawing,
  dimension,
  drawingRoom,
  fitTo,
  layer,
  lengthText,
  line,
  type Mark,
  northArrow,
  type PaperMap,
  region,
  type Sheet,
  scaleBar,
  text,
  titleBlock,
} from '../paper/index.js'
import { embedLabels } from './plan-labels.js'
import { beside, embedPiece, fillOf, openingPiece, wallById } from './wall-shapes.js'

export type LayerPlanParts = Pick<Plan, 'job' | 'sections' | 'bands' | 'routes'>

/** Plan of one layer at paper scale: beads at true width, sections, openings, embeds, start points, dimensions. */
export function drawLayerPlan(parts: LayerPlanParts, number: number, sheet: Sheet): Drawing {
  const { job } = parts
  const room = drawingRoom(sheet)
  const bounds = boundsOf(outline(parts), Math.max(...job.walls.map(wall => wall.thickness)) / 2)
  // Room for labels on all sides, for dimensions at the left and below, for the scale bar under them.
  const inner = { x: room.x + 24, y: room.y + 30, width: room.width - 46, height: room.height - 44 }
  const paper = fitTo(bounds, inner, job.units)
  const top = number * job.print.layerHeight
  const embeds = embedsAt(parts, number)
  return {
    title: `${job.name}, layer ${number}`,
    says: `Plan of layer ${number}, its top ${lengthText(top, job.units)} over the slab, scale ${paper.scaleText}, with ${embeds.length} embeds.`,
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer('bodies', bodies(parts, number, paper)),
      layer('beads', beads(parts, number, paper)),
      layer('openings', openings(parts, number, paper)),
      layer('columns', columns(parts, paper)),
      layer('embeds', [...embedMarks(parts, embeds, paper), ...embedLabels(parts, embeds, paper)]),
      layer('starts', starts(parts, number, paper)),
      layer('letters', sectionLetters(parts, paper)),
      layer('dimensions', dimensions(parts, paper)),
      layer(
        'frame',
        [
          scaleBar(paper, [room.x + 4, room.y + 1], job.units),
          northArrow([room.x + room.width - 9, room.y + room.height - 11], job.site.yAxisBearing),
          titleBlock(sheet, {
            title: `Layer ${number}`,
            subtitle: `Top of layer ${lengthText(top, job.units)} over the slab. ● nozzle starts here, arrow: first move.`,
            scaleText: `scale ${paper.scaleText}`,
          }),
        ].flat(),
      ),
    ],
  }
}

/** Corners of the boxes round all centrelines, arcs at their full reach. */
const outline = ({ job }: LayerPlanParts): Point[] =>
  job.walls.flatMap(wall => {
    const { least, most } = pathBounds(wall.centreline)
    return [least, most]
  })

const bandOf = (parts: LayerPlanParts, section: string, number: number) =>
  parts.bands
    .find(candidate => candidate.section === section)
    ?.bands.find(band => band.fromLayer <= number && number <= band.toLayer)

function bodies(parts: LayerPlanParts, number: number, paper: PaperMap): Mark[] {
  return parts.sections.flatMap(section =>
    (bandOf(parts, section.id, number)?.body ?? []).map(polygon => ({
      ...region(
        [polygon.outer, ...polygon.holes].map(ring => ring.map(paper.toPaper)),
        'none',
        fillOf(parts.sections, section.id),
      ),
      ref: section.id,
      title: `section ${section.id}`,
    })),
  )
}

/** A dark ribbon with a lighter one on top leaves the bead's two edges showing. */
function beads(parts: LayerPlanParts, number: number, paper: PaperMap): Mark[] {
  return parts.sections.flatMap(section => {
    const fill = fillOf(parts.sections, section.id)
    return webFirst(bandOf(parts, section.id, number)?.beads ?? []).flatMap(bead => {
      const common = {
        kind: 'ribbon' as const,
        points: bead.path.points.map(paper.toPaper),
        bulges: bead.path.bulges,
        closed: bead.path.closed,
      }
      const width = paper.length(bead.width)
      return [
        { ...common, width, fill: 'soft' as const, ref: bead.id },
        { ...common, width: Math.max(0.1, width - 0.36), fill },
      ]
    })
  })
}

/** The wythes lie over the web's ends, so that the faces show unbroken. */
const webFirst = (beads: readonly Bead[]): readonly Bead[] => [
  ...beads.filter(bead => bead.role === 'web'),
  ...beads.filter(bead => bead.role !== 'web'),
]

function openings({ job }: LayerPlanParts, number: number, paper: PaperMap): Mark[] {
  const middle = (number - 0.5) * job.print.layerHeight
  return job.openings.flatMap(opening => {
    const wall = wallById(job, opening.wall)
    if (!wall) return []
    const piece = openingPiece(wall, opening).map(paper.toPaper)
    const open = opening.sill < middle && middle < opening.head
    const lintel = opening.lintel && middle > opening.head && middle < opening.head + opening.lintel.height
    const centre = piece.reduce(
      ([x, y], point) => [x + point[0] / piece.length, y + point[1] / piece.length],
      [0, 0],
    )
    const name = text([centre[0]!, centre[1]! - 0.9], opening.id, 'normal', 'middle', { halo: true })
    if (open)
      return [
        line(piece, 'thin', { closed: true, ref: opening.id, title: `${opening.kind} ${opening.id}` }),
        line([piece[0]!, piece[Math.floor(piece.length / 2)]!], 'thin'),
        line([piece[Math.floor(piece.length / 2) - 1]!, piece[piece.length - 1]!], 'thin'),
        name,
      ]
    if (lintel)
      return [
        line(piece, 'edge', { closed: true, fill: 'lintel', ref: opening.id, title: `lintel ${opening.id}` }),
        name,
      ]
    return [line(piece, 'hidden', { closed: true, ref: opening.id, title: `${opening.kind} ${opening.id}` })]
  })
}

function columns({ job }: LayerPlanParts, paper: PaperMap): Mark[] {
  return job.columns.flatMap(column => {
    const wall = wallById(job, column.wall)
    if (!wall) return []
    const half = column.thickness / 2 - job.print.beadWidth
    const piece = embedPiece(wall, {
      ...({ face: 'middle', depth: 2 * half, at: column.at, width: column.length } as Embed),
    }).map(paper.toPaper)
    const centre = piece.reduce(
      ([x, y], point) => [x + point[0] / piece.length, y + point[1] / piece.length],
      [0, 0],
    )
    return [
      line(piece, 'hidden', { closed: true, ref: column.id, title: `column ${column.id}` }),
      text([centre[0]!, centre[1]! - 0.9], column.id, 'normal', 'middle', { halo: true }),
    ]
  })
}

function embedsAt({ job }: LayerPlanParts, number: number): readonly Embed[] {
  const middle = (number - 0.5) * job.print.layerHeight
  return job.embeds
    .filter(embed => embed.bottom < middle && middle < embed.bottom + embed.height)
    .map(embed => embedAt(embed, middle, job.print))
}

const embedMarks = ({ job }: LayerPlanParts, embeds: readonly Embed[], paper: PaperMap): Mark[] =>
  embeds.flatMap(embed => {
    const wall = wallById(job, embed.wall)
    if (!wall) return []
    return [
      line(embedPiece(wall, embed).map(paper.toPaper), 'accent', {
        closed: true,
        fill: 'paper',
        ref: embed.id,
        title: `${embed.kind} ${embed.id}`,
      }),
    ]
  })

/** Where the nozzle starts the layer, and which way it goes. */
function starts(parts: LayerPlanParts, number: number, paper: PaperMap): Mark[] {
  return parts.routes.flatMap(({ section, routes }) => {
    const route = routes.find(r => r.fromLayer <= number && number <= r.toLayer && r.parity === number % 2)
    const path = route?.passes[0]?.path
    const first = path?.points[0]
    const second = path?.points[1]
    if (!first || !second) return []
    const from = paper.toPaper(first)
    const to = paper.toPaper(second)
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
    const [dx, dy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
    const at = (along: number, aside: number) =>
      [from[0] + dx * along - dy * aside, from[1] + dy * along + dx * aside] as const
    return [
      {
        kind: 'circle' as const,
        at: from,
        radius: 0.9,
        pen: 'accent' as const,
        fill: 'accent' as const,
        title: `section ${section} starts here`,
      },
      line([at(0, 0), at(5, 0)], 'accentThick'),
      line([at(7, 0), at(4.6, 1.1), at(4.6, -1.1)], 'accent', { closed: true, fill: 'accent' }),
    ]
  })
}

/** The letter of a section beside its longest stretch, on the side and at the distance where no wall is in the way. */
function sectionLetters({ job, sections }: LayerPlanParts, paper: PaperMap): Mark[] {
  const radius = 3.6
  const perMetre = paper.length(1)
  const clear = (point: Point) =>
    job.walls.every(
      wall => nearestOnPath(wall.centreline, point).distance > wall.thickness / 2 + (radius + 1) / perMetre,
    )
  return sections.flatMap(section => {
    const longest = [...section.stretches].sort((a, b) => b.to - b.from - (a.to - a.from))[0]
    const wall = longest && wallById(job, longest.wall)
    if (!wall) return []
    const places = [12, -12, 8, -8, 18, -18].flatMap(reach =>
      [0.5, 0.35, 0.65, 0.2, 0.8].map(share =>
        beside(
          wall,
          longest.from + share * (longest.to - longest.from),
          (Math.sign(reach) * wall.thickness) / 2 + reach / perMetre,
        ),
      ),
    )
    const at = paper.toPaper(places.find(clear) ?? places[0]!)
    return [
      { kind: 'circle' as const, at, radius, pen: 'edge' as const, fill: fillOf(sections, section.id) },
      text([at[0], at[1] - 1.25], section.id, 'large', 'middle', {
        ref: section.id,
        title: `section ${section.id}`,
      }),
    ]
  })
}

/** Chains over the walls' ends and bends along the foot and the left side, and the overall sizes outside them. */
function dimensions(parts: LayerPlanParts, paper: PaperMap): Mark[] {
  const { job } = parts
  const edge = boundsOf(outline(parts))
  const points = job.walls.flatMap(wall => wall.centreline.points)
  const half = Math.max(...job.walls.map(wall => wall.thickness)) / 2
  const xs = distinct(points.map(point => point[0]))
  const ys = distinct(points.map(point => point[1]))
  const [x0, x1, y0, y1] = [xs[0]!, xs.at(-1)!, ys[0]!, ys.at(-1)!]
  const foot = paper.toPaper([x0, edge.y[0]])[1] - paper.length(half) - 14
  const left = paper.toPaper([edge.x[0], y0])[0] - paper.length(half) - 14
  const across = (from: number, to: number, y: number): Mark[] =>
    dimension(
      [paper.toPaper([from, 0])[0], y],
      [paper.toPaper([to, 0])[0], y],
      lengthText(to - from, job.units),
    )
  const up = (from: number, to: number, x: number): Mark[] =>
    dimension(
      [x, paper.toPaper([0, from])[1]],
      [x, paper.toPaper([0, to])[1]],
      lengthText(to - from, job.units),
    )
  return [
    ...chain(xs, (a, b) => across(a, b, foot)),
    ...(xs.length > 2 ? across(x0, x1, foot - 5) : []),
    ...chain(ys, (a, b) => up(a, b, left)),
    ...(ys.length > 2 ? up(y0, y1, left - 5) : []),
  ]
}

const chain = (values: readonly number[], mark: (from: number, to: number) => Mark[]): Mark[] =>
  values.slice(1).flatMap((to, index) => mark(values[index]!, to))

function distinct(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted.filter((value, index) => index === 0 || value - sorted[index - 1]! > 0.02)
}
