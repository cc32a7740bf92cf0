import { localTime } from '@dawnlift/core/clock'
import type { Embed, Opening, Wall } from '@dawnlift/core/job'
import type { Plan } from '@dawnlift/core/plan'
import { pointStations, runLength } from '@dawnlift/core/trade'
import {
  box,
  type Drawing,
  dayText,
  dimension,
  drawingRoom,
  fitTo,
  hatch,
  layer,
  lengthText,
  line,
  type Mark,
  type PaperMap,
  type PaperPoint,
  type Sheet,
  scaleBar,
  text,
  titleBlock,
} from '../paper/index.js'
import { callLabels } from './call-labels.js'
import { fillOf } from './wall-shapes.js'

export type ElevationParts = Pick<Plan, 'job' | 'sections' | 'campaign' | 'calls'>

export interface ElevationOptions {
  /**
   * From which side the wall is looked at. Standing before its right face one has its start at the left hand;
   * before its left face at the right hand, so that drawing is turned over.
   */
  readonly seenFrom?: 'left' | 'right'
  /** Draw only between these stations. */
  readonly along?: readonly [number, number]
  /** Label only these calls; without it all calls of the wall. */
  readonly calls?: ReadonlySet<string>
}

/** One wall unrolled along its centreline: lifts with their dates, layers, openings, lintels, embeds and calls. */
export function drawWallElevation(
  parts: ElevationParts,
  id: string,
  sheet: Sheet,
  options: ElevationOptions = {},
): Drawing {
  const { job } = parts
  const wall = job.walls.find(candidate => candidate.id === id)
  if (!wall) throw new RangeError(`no wall ${id} in ${job.name}`)
  const side = options.seenFrom ?? 'right'
  const view = viewOf(parts, wall, sheet, side, options)
  return {
    title: `${job.name}, ${wall.name}`,
    says: `Wall ${wall.name} unrolled, seen on its ${side} face, scale ${view.paper.scaleText}.`,
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer('lifts', liftFields(view)),
      layer('layers', layerLines(view)),
      layer(
        'openings',
        job.openings
          .filter(o => o.wall === id && within(view, o.at, o.width))
          .flatMap(o => openingMarks(view, o)),
      ),
      layer('columns', columnMarks(view)),
      layer(
        'embeds',
        job.embeds
          .filter(e => e.wall === id && within(view, e.at, e.width))
          .flatMap(e => embedMarks(view, e)),
      ),
      layer('outline', outlineMarks(view)),
      layer('calls', callLabels(view)),
      layer('dimensions', dimensionMarks(view)),
      layer('frame', [
        ...(sheet.frame ? scaleBar(view.paper, [view.room.x + 4, view.room.y + 1], job.units) : []),
        ...titleBlock(sheet, {
          title: wall.name,
          subtitle: `Unrolled along the centreline, seen on its ${side} face. Start of the wall at the ${side === 'right' ? 'left' : 'right'}.`,
          scaleText: `scale ${view.paper.scaleText}`,
        }),
      ]),
    ],
  }
}

export interface ElevationView {
  readonly parts: ElevationParts
  readonly wall: Wall
  readonly side: 'left' | 'right'
  readonly along: readonly [number, number]
  readonly paper: PaperMap
  readonly room: { readonly x: number; readonly y: number; readonly width: number; readonly height: number }
  readonly calls: ElevationParts['calls']
  readonly zone: string
}

function viewOf(
  parts: ElevationParts,
  wall: Wall,
  sheet: Sheet,
  side: 'left' | 'right',
  options: ElevationOptions,
): ElevationView {
  const length = runLength(wall.centreline)
  const along = options.along
    ? ([Math.max(0, options.along[0]), Math.min(length, options.along[1])] as const)
    : ([0, length] as const)
  const room = drawingRoom(sheet)
  const calls = parts.calls.filter(
    call => call.wall === wall.id && (!options.calls || options.calls.has(call.id)),
  )
  // Layer numbers left, lift names right, labels above, dimensions below.
  const tall = sheet.frame
  const inner = {
    x: room.x + (tall ? 16 : 12),
    y: room.y + (tall ? 16 : 7),
    width: room.width - (tall ? 52 : 40),
    height: room.height - (tall ? 46 : 22),
  }
  const paper = fitTo({ x: along, y: [wall.base, wall.top] }, inner, parts.job.units, side === 'left')
  return { parts, wall, side, along, paper, room, calls, zone: parts.job.site.timeZone }
}

const within = (view: ElevationView, at: number, width: number): boolean =>
  at + width / 2 > view.along[0] && at - width / 2 < view.along[1]

/** Paper corners of a block of the wall, cut to the part that is drawn. */
export function block(
  view: ElevationView,
  along: readonly [number, number],
  up: readonly [number, number],
): readonly [PaperPoint, PaperPoint] {
  const clip = (s: number) => Math.min(view.along[1], Math.max(view.along[0], s))
  const a = view.paper.toPaper([clip(along[0]), up[0]])
  const b = view.paper.toPaper([clip(along[1]), up[1]])
  return [
    [Math.min(a[0], b[0]), Math.min(a[1], b[1])],
    [Math.max(a[0], b[0]), Math.max(a[1], b[1])],
  ]
}

/** Each lift as a field over its section's stretches, with its name, date and layers beside the wall. */
function liftFields(view: ElevationView): Mark[] {
  const { parts, wall } = view
  const h = parts.job.print.layerHeight
  const lifts = parts.campaign.days.flatMap(day => day.lifts.map(lift => ({ lift, date: day.date })))
  const edge = block(view, view.along, [wall.base, wall.top])
  const labels: Mark[] = []
  const fields = lifts.flatMap(({ lift, date }) => {
    const stretches = parts.sections.find(section => section.id === lift.section)?.stretches ?? []
    return stretches
      .filter(
        stretch => stretch.wall === wall.id && stretch.to > view.along[0] && stretch.from < view.along[1],
      )
      .flatMap((stretch): Mark[] => {
        const up = [(lift.firstLayer - 1) * h, Math.min(wall.top, lift.lastLayer * h)] as const
        if (up[0] >= wall.top) return []
        const [low, high] = block(view, [stretch.from, stretch.to], up)
        const fill = fillOf(parts.sections, lift.section)
        labels.push(
          ...liftLabel(
            view,
            low,
            high,
            edge,
            `${lift.id}`,
            dayText(date),
            `layers ${lift.firstLayer}–${lift.lastLayer}`,
            stretch.to,
          ),
        )
        return [
          box(low, high, 'none', fill, { ref: lift.id, title: `lift ${lift.id}, ${dayText(date)}` }),
          line(
            [
              [low[0], high[1]],
              [high[0], high[1]],
            ],
            'outline',
          ),
        ]
      })
  })
  return [...fields, ...labels]
}

function liftLabel(
  view: ElevationView,
  low: PaperPoint,
  high: PaperPoint,
  edge: readonly [PaperPoint, PaperPoint],
  id: string,
  day: string,
  layers: string,
  to: number,
): Mark[] {
  const last =
    view.side === 'right' ? to >= view.along[1] - 1e-6 : low[0] <= edge[0][0] + 1e-6 || to >= view.along[1]
  const tall = high[1] - low[1]
  const middle = (low[1] + high[1]) / 2
  const x = edge[1][0] + 3
  if (!last) return [text([(low[0] + high[0]) / 2, middle - 0.9], id, 'normal', 'middle', { halo: true })]
  if (tall > 8)
    return [
      text([x, middle + 2.2], id, 'large'),
      text([x, middle - 1.2], day, 'small'),
      text([x, middle - 4.2], layers, 'tiny', 'start', { fill: 'soft' }),
    ]
  return [text([x, middle - 0.8], `${id} ${day}`, tall > 2.4 ? 'small' : 'tiny')]
}

/** Layers as hair lines where there is room for them; numbers every ten, or every twenty where it is tight. */
function layerLines(view: ElevationView): Mark[] {
  const { wall, paper, parts } = view
  const h = parts.job.print.layerHeight
  const count = Math.round(wall.top / h)
  const first = Math.round(wall.base / h) + 1
  const each = paper.length(h) >= 0.9 ? 1 : 5
  const numbered = paper.length(10 * h) >= 3 ? 10 : 20
  const [low, high] = block(view, view.along, [wall.base, wall.top])
  const marks: Mark[] = []
  for (let number = first; number <= count; number++) {
    const y = paper.toPaper([0, number * h])[1]
    if (number % each === 0)
      marks.push(
        line(
          [
            [low[0], y],
            [high[0], y],
          ],
          'hair',
        ),
      )
    if (number % numbered === 0 || number === count) {
      if (number === count && count % numbered !== 0 && (count % numbered) * paper.length(h) < 2) continue
      marks.push(
        line(
          [
            [low[0] - 1.5, y],
            [low[0], y],
          ],
          'thin',
        ),
      )
      marks.push(text([low[0] - 2.2, y - 0.7], String(number), 'small', 'end'))
    }
  }
  return marks
}

function openingMarks(view: ElevationView, opening: Opening): Mark[] {
  const along = [opening.at - opening.width / 2, opening.at + opening.width / 2] as const
  const [low, high] = block(view, along, [opening.sill, opening.head])
  const centre = (low[0] + high[0]) / 2
  const marks: Mark[] = [
    box(low, high, 'edge', 'void', { ref: opening.id, title: `${opening.kind} ${opening.id}` }),
    line([low, high], 'hair'),
    line(
      [
        [low[0], high[1]],
        [high[0], low[1]],
      ],
      'hair',
    ),
    text([centre, (low[1] + high[1]) / 2 - 1], opening.id, 'large', 'middle', { halo: true }),
  ]
  if (!opening.lintel) return marks
  const { bearing, height } = opening.lintel
  const [from, to] = block(
    view,
    [along[0] - bearing, along[1] + bearing],
    [opening.head, opening.head + height],
  )
  return [
    ...marks,
    box(from, to, 'edge', 'lintel', { ref: `${opening.id}/set`, title: `lintel over ${opening.id}` }),
    ...hatch(from, to, 1.6, 'thin'),
    // The bearings are the pockets cut the evening before.
    ...[along[0], along[1]].map(at => {
      const x = view.paper.toPaper([at, 0])[0]
      return line(
        [
          [x, from[1]],
          [x, to[1]],
        ],
        'warn',
      )
    }),
  ]
}

function columnMarks(view: ElevationView): Mark[] {
  const { parts, wall } = view
  return parts.job.columns
    .filter(column => column.wall === wall.id && within(view, column.at, column.length))
    .flatMap(column => {
      const [low, high] = block(
        view,
        [column.at - column.length / 2, column.at + column.length / 2],
        [wall.base, wall.top],
      )
      return [
        box(low, high, 'hidden', undefined, { ref: column.id, title: `column ${column.id}` }),
        text([(low[0] + high[0]) / 2, low[1] + 2], column.id, 'normal', 'middle', { halo: true }),
      ]
    })
}

/** Seen on this face: full lines; on the other face or in the cavity: hidden lines. */
function embedMarks(view: ElevationView, embed: Embed): Mark[] {
  const [low, high] = block(
    view,
    [embed.at - embed.width / 2, embed.at + embed.width / 2],
    [embed.bottom, embed.bottom + embed.height],
  )
  const seen = embed.face === view.side || embed.face === 'through'
  const grow = (a: PaperPoint, b: PaperPoint): readonly [PaperPoint, PaperPoint] => {
    const x = Math.max(0, (1 - (b[0] - a[0])) / 2)
    const y = Math.max(0, (0.5 - (b[1] - a[1])) / 2)
    return [
      [a[0] - x, a[1] - y],
      [b[0] + x, b[1] + y],
    ]
  }
  const [from, to] = grow(low, high)
  const common = { ref: embed.id, title: `${embed.kind} ${embed.id}` }
  const fill = embed.method === 'cut' ? 'cut' : 'paper'
  const body = box(from, to, seen ? 'accent' : 'hidden', seen ? fill : undefined, common)
  const cross: Mark[] =
    embed.face === 'through'
      ? [
          line([from, to], 'accent'),
          line(
            [
              [from[0], to[1]],
              [to[0], from[1]],
            ],
            'accent',
          ),
        ]
      : []
  return [body, ...cross]
}

/** The wall's outline, its bends, and where sections meet. */
function outlineMarks(view: ElevationView): Mark[] {
  const { wall, parts, paper } = view
  const [low, high] = block(view, view.along, [wall.base, wall.top])
  const bends = pointStations(wall.centreline)
    .slice(1, -1)
    .filter(s => s > view.along[0] && s < view.along[1])
    .map(s =>
      line(
        [
          [paper.toPaper([s, 0])[0], low[1]],
          [paper.toPaper([s, 0])[0], high[1]],
        ],
        'axis',
      ),
    )
  const joints = distinctJoints(view).map(at => {
    const x = paper.toPaper([at, 0])[0]
    return line(
      [
        [x, low[1] - 2],
        [x, high[1] + 2],
      ],
      'warn',
    )
  })
  const slab = line(
    [
      [low[0] - 3, low[1]],
      [high[0] + 3, low[1]],
    ],
    'outline',
  )
  return [
    box(low, high, 'outline'),
    ...bends,
    ...joints,
    ...(wall.base < parts.job.print.layerHeight ? [slab] : []),
  ]
}

function distinctJoints(view: ElevationView): readonly number[] {
  const inside = view.parts.sections
    .flatMap(section => section.joints)
    .filter(
      joint =>
        joint.wall === view.wall.id && joint.at > view.along[0] + 0.01 && joint.at < view.along[1] - 0.01,
    )
    .map(joint => Math.round(joint.at * 1000) / 1000)
  return [...new Set(inside)].sort((a, b) => a - b)
}

/** Openings along the foot; sill and head at the left of the first of each height. */
function dimensionMarks(view: ElevationView): Mark[] {
  const { parts, wall, paper, along } = view
  const units = parts.job.units
  const foot = paper.toPaper([0, wall.base])[1] - 5
  const stations = [
    along[0],
    ...parts.job.openings
      .filter(opening => opening.wall === wall.id && within(view, opening.at, opening.width))
      .flatMap(opening => [opening.at - opening.width / 2, opening.at + opening.width / 2]),
    along[1],
  ]
    .filter(s => s >= along[0] - 1e-9 && s <= along[1] + 1e-9)
    .sort((a, b) => a - b)
  const chain = stations.slice(1).flatMap((to, index) => {
    const from = stations[index]!
    if (to - from < 0.005) return []
    const x = [paper.toPaper([from, 0])[0], paper.toPaper([to, 0])[0]].sort((a, b) => a - b)
    return dimension([x[0]!, foot], [x[1]!, foot], lengthText(to - from, units))
  })
  const whole =
    stations.length > 2
      ? [paper.toPaper([along[0], 0])[0], paper.toPaper([along[1], 0])[0]].sort((a, b) => a - b)
      : []
  const left = Math.min(paper.toPaper([along[0], 0])[0], paper.toPaper([along[1], 0])[0]) - 10
  return [
    ...chain,
    ...(whole.length
      ? dimension([whole[0]!, foot - 4.5], [whole[1]!, foot - 4.5], lengthText(along[1] - along[0], units))
      : []),
    ...dimension(
      [left, paper.toPaper([0, wall.base])[1]],
      [left, paper.toPaper([0, wall.top])[1]],
      lengthText(wall.top - wall.base, units),
    ),
  ]
}

/** `Tue 14 Jul` of a moment in the site's zone. */
export const dayOfCall = (at: number, zone: string): string => dayText(localTime(at, zone).date)
