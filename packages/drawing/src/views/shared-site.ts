import {
  box,
  type Drawing,
  dayText,
  dimension,
  drawingRoom,
  layer,
  line,
  type Mark,
  type PaperPoint,
  type Pen,
  type Room,
  type Sheet,
  text,
  titleBlock,
} from '../paper/index.js'
import { type DateAxis, dateAxis, dateTicks, daysBetween } from './date-axis.js'

/** How a building grows: what share of its layers stands on the evening of each date it is printed on. */
export interface SiteGrowth {
  readonly building: string
  readonly evenings: readonly { readonly date: string; readonly share: number }[]
}

export interface SharedSiteParts {
  readonly site: string
  /** Machine and crew shared among the buildings, and one building after the other. */
  readonly shared: readonly SiteGrowth[]
  readonly oneAfterOther: readonly SiteGrowth[]
}

interface Axes {
  readonly room: Room
  readonly dates: DateAxis
  readonly y: (share: number) => number
}

/**
 * Lines of balance of a site: each building's share of layers over the days, drawn full where machine and crew are shared and broken
 * where one building follows the other; the days gained measured between the two ends.
 */
export function drawSharedSite(parts: SharedSiteParts, sheet: Sheet): Drawing {
  const axes = axesOf(parts, sheet)
  const [sooner, later] = [lastDate(parts.shared), lastDate(parts.oneAfterOther)]
  const gained = daysBetween(sooner, later)
  return {
    title: `${parts.site}, buildings printed in turn`,
    says: `${parts.shared.length} buildings: up on ${sooner} with machine and crew shared, on ${later} one after the other; ${gained} days sooner.`,
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer('grid', grid(axes)),
      layer(
        'one after other',
        parts.oneAfterOther.flatMap((growth, i) => {
          const other = parts.shared.find(each => each.building === growth.building)
          return growthLine(growth, i, axes, 'hidden', endOf(growth) !== (other && endOf(other)))
        }),
      ),
      layer(
        'shared',
        parts.shared.flatMap((growth, i) => growthLine(growth, i, axes, 'accentThick', true)),
      ),
      layer('gain', gain(axes, sooner, later, gained)),
      layer(
        'frame',
        titleBlock(sheet, {
          title: 'Buildings printed in turn',
          subtitle: `Full: machine and crew shared. Broken: one after the other. Up on ${dayText(sooner)}, not ${dayText(later)}.`,
        }),
      ),
    ],
  }
}

const endOf = ({ evenings }: SiteGrowth): string | undefined => evenings.at(-1)?.date

const lastDate = (growths: readonly SiteGrowth[]): string =>
  growths
    .flatMap(({ evenings }) => evenings.map(each => each.date))
    .sort()
    .at(-1) ?? '2000-01-01'

function axesOf({ shared, oneAfterOther }: SharedSiteParts, sheet: Sheet): Axes {
  const outer = drawingRoom(sheet)
  const room = { x: outer.x + 14, y: outer.y + 9, width: outer.width - 18, height: outer.height - 24 }
  const dates = [...shared, ...oneAfterOther]
    .flatMap(({ evenings }) => evenings.map(each => each.date))
    .sort()
  return {
    room,
    dates: dateAxis(room, dates[0] ?? '2000-01-01', dates.at(-1) ?? '2000-01-01'),
    y: share => room.y + share * room.height,
  }
}

function grid({ room, dates, y }: Axes): Mark[] {
  return [
    box([room.x, room.y], [room.x + room.width, room.y + room.height], 'edge'),
    ...[0, 0.25, 0.5, 0.75, 1].flatMap(share => [
      line(
        [
          [room.x, y(share)],
          [room.x + room.width, y(share)],
        ],
        'hair',
      ),
      text([room.x - 1.5, y(share) - 0.8], `${100 * share} %`, 'small', 'end'),
    ]),
    ...dateTicks(dates),
  ]
}

/** Level while another building is printed, rising on its own days; a mark of its own shape on each of them. */
function growthLine(
  growth: SiteGrowth,
  index: number,
  { dates, y }: Axes,
  pen: Pen,
  isNamed: boolean,
): Mark[] {
  const half = dates.room.width / dates.days / 2
  const points = growth.evenings.flatMap(({ date, share }, i): PaperPoint[] => {
    const before = growth.evenings[i - 1]?.share ?? 0
    return [
      [dates.x(date) - half, y(before)],
      [dates.x(date), y(share)],
    ]
  })
  const last = points.at(-1)
  if (!last) return []
  const isShared = pen === 'accentThick'
  return [
    line(points, pen, { ref: growth.building, title: growth.building }),
    ...growth.evenings.flatMap(({ date, share }) => sign([dates.x(date), y(share)], index, isShared)),
    ...(isNamed
      ? [
          text(
            [last[0] + (isShared ? -2 : 0), last[1] + 1.8 + (index % 2) * 2.8],
            growth.building,
            'small',
            isShared ? 'end' : 'middle',
            { halo: true, ...(isShared ? {} : { fill: 'soft' as const }) },
          ),
        ]
      : []),
  ]
}

/** Disc, square, triangle: buildings are told apart by shape; shared ones are filled. */
function sign(at: PaperPoint, index: number, isShared: boolean): Mark[] {
  const fill = isShared ? ('ink' as const) : ('paper' as const)
  const [x, y] = at
  const r = 1
  if (index % 3 === 0) return [{ kind: 'circle', at, radius: r, pen: 'thin', fill }]
  const corners: PaperPoint[] =
    index % 3 === 1
      ? [
          [x - r, y - r],
          [x + r, y - r],
          [x + r, y + r],
          [x - r, y + r],
        ]
      : [
          [x - 1.2 * r, y - r],
          [x + 1.2 * r, y - r],
          [x, y + 1.2 * r],
        ]
  return [line(corners, 'thin', { closed: true, fill })]
}

function gain({ room, dates }: Axes, sooner: string, later: string, days: number): Mark[] {
  if (days <= 0) return []
  const y = room.y + room.height + 8
  const ends = [dates.x(sooner), dates.x(later)] as const
  return [
    ...ends.map(x =>
      line(
        [
          [x, room.y],
          [x, y + 1.5],
        ],
        'axis',
      ),
    ),
    ...dimension([ends[0], y], [ends[1], y], `${days} ${days === 1 ? 'day' : 'days'} sooner`),
  ]
}
