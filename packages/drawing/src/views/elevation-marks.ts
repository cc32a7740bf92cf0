import { pointStations } from '@dawnlift/core/geometry'
import type { Embed, Opening } from '@dawnlift/core/job'
import { embedOutline } from '@dawnlift/core/wall'
import { box, hatch, line, type Mark, type PaperPoint, text, textWidth } from '../paper/index.js'
import { block, type ElevationView, within } from './elevation-view.js'

/** Layers as hair lines where there is room for them; numbers every ten, or every twenty where it is tight. */
export function layerLines(view: ElevationView): Mark[] {
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

export function openingMarks(view: ElevationView, opening: Opening): Mark[] {
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
    ...(high[0] - low[0] > textWidth(opening.id, 'large')
      ? [text([centre, (low[1] + high[1]) / 2 - 1], opening.id, 'large', 'middle', { halo: true })]
      : []),
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
    ...[along[0], along[1]]
      .filter(at => within(view, at, 0))
      .map(at => {
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

export function columnMarks(view: ElevationView): Mark[] {
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
export function embedMarks(view: ElevationView, embed: Embed): Mark[] {
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
  const pen = seen ? 'accent' : 'hidden'
  const body = embed.head
    ? line(embedOutline(embed, view.parts.job.print).map(view.paper.toPaper), pen, {
        closed: true,
        ...(seen ? { fill } : {}),
        ...common,
      })
    : box(from, to, pen, seen ? fill : undefined, common)
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
export function outlineMarks(view: ElevationView): Mark[] {
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
