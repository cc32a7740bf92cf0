import { localTime } from '@dawnlift/core/clock'
import type { LimitKind } from '@dawnlift/core/limit'
import type { PrintHour } from '@dawnlift/core/weather'
import {
  box,
  type Drawing,
  dayText,
  drawingRoom,
  type Fill,
  layer,
  line,
  type Mark,
  type PaperPoint,
  type Room,
  type Sheet,
  text,
  titleBlock,
} from '../paper/index.js'

export interface SeasonParts {
  readonly job: { readonly name: string; readonly site: { readonly timeZone: string } }
  readonly hours: readonly PrintHour[]
}

/** A letter for what shuts an hour: told without colour, and read in a column. */
const letters: Readonly<Partial<Record<LimitKind, string>>> = {
  'mix-hot': 'h',
  'mix-cold': 'c',
  'air-cold': 'c',
  evaporation: 'e',
  wind: 'w',
  gust: 'w',
  rain: 'r',
  'crew-heat': 'p',
  daylight: '·',
  'permitted-hours': '·',
  shift: '·',
}
const key =
  'h mix too hot · c too cold · e drying too fast · w wind · r rain · p heat on people · dot: outside permitted hours or daylight'

const narrowKey =
  'slanting stroke: shut by weather · level stroke: outside permitted hours or daylight · letters where there is room'

interface Cell {
  readonly hour: number
  readonly open: boolean
  readonly why: string
}

/** The print windows of a season: a row a day, a column an hour, white where one may print. */
export function drawSeason({ job, hours }: SeasonParts, sheet: Sheet): Drawing {
  const rows = rowsOf(hours, job.site.timeZone)
  const outer = drawingRoom(sheet)
  const room = { x: outer.x + 20, y: outer.y + 5, width: outer.width - 34, height: outer.height - 10 }
  const open = hours.filter(hour => hour.open).length
  return {
    title: `${job.name}, print windows`,
    says: `${open} of ${hours.length} hours are open for printing over ${rows.length} days.`,
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer('cells', cells(rows, room)),
      layer('axes', axisMarks(rows, room)),
      layer('frame', [
        text([outer.x, outer.y + 0.5], isLettered(rows, room) ? key : narrowKey, 'tiny', 'start', {
          fill: 'soft',
        }),
        ...titleBlock(sheet, {
          title: 'Print windows',
          subtitle: `${open} open hours in ${rows.length} days.`,
        }),
      ]),
    ],
  }
}

type Row = { readonly date: string; readonly cells: readonly Cell[] }

function rowsOf(hours: readonly PrintHour[], zone: string): readonly Row[] {
  const rows = new Map<string, Cell[]>()
  for (const hour of hours) {
    const { date, clock } = localTime(hour.start, zone)
    const over = hour.limits.filter(limit => limit.demand > limit.capacity)
    // Weather says more than the clock: name it first where both shut the hour.
    const why = over
      .map(limit => letters[limit.kind] ?? '?')
      .sort((a, b) => (a === '·' ? 1 : b === '·' ? -1 : 0))[0]
    const row = rows.get(date) ?? []
    row.push({ hour: Math.floor(clock / 3600), open: hour.open, why: why ?? '?' })
    rows.set(date, row)
  }
  return [...rows.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([date, list]) => ({ date, cells: list }))
}

const rowHeight = (rows: readonly Row[], room: Room): number =>
  Math.min(room.height / Math.max(rows.length, 1), 8)

const isLettered = (rows: readonly Row[], room: Room): boolean =>
  rowHeight(rows, room) >= 2 && room.width / 24 >= 2

function cells(rows: readonly Row[], room: Room): Mark[] {
  const wide = room.width / 24
  const tall = rowHeight(rows, room)
  const lettered = isLettered(rows, room)
  return rows.flatMap((row, index) =>
    row.cells.flatMap(cell => {
      const x = room.x + cell.hour * wide
      const y = room.y + room.height - (index + 1) * tall
      const clockOnly = cell.why === '·'
      const fill: Fill = cell.open ? 'open' : clockOnly ? 'night' : 'shut'
      const field = box([x, y], [x + wide, y + tall], lettered ? 'hair' : 'none', fill)
      if (cell.open) return [field]
      if (!lettered) return [field, stroke([x, y], [x + wide, y + tall], clockOnly)]
      return [field, text([x + wide / 2, y + tall / 2 - 0.6], cell.why, 'tiny', 'middle', { fill: 'soft' })]
    }),
  )
}

/** Where there is no room for letters a shut hour is still told in grey: weather slants across it, the clock lies level. */
function stroke([x0, y0]: PaperPoint, [x1, y1]: PaperPoint, clockOnly: boolean): Mark {
  const middle = (y0 + y1) / 2
  return clockOnly
    ? line(
        [
          [x0 + (x1 - x0) * 0.35, middle],
          [x1 - (x1 - x0) * 0.35, middle],
        ],
        'dimension',
      )
    : line(
        [
          [x0, y0],
          [x1, y1],
        ],
        'dimension',
      )
}

function axisMarks(rows: readonly Row[], room: Room): Mark[] {
  const wide = room.width / 24
  const tall = rowHeight(rows, room)
  const each = Math.max(1, Math.ceil(2.6 / tall))
  const top = room.y + room.height
  const foot = top - tall * rows.length
  return [
    ...Array.from({ length: 9 }, (_, i) =>
      text([room.x + i * 3 * wide, top + 1.2], String(i * 3).padStart(2, '0'), 'small', 'middle'),
    ),
    ...Array.from({ length: 9 }, (_, i) =>
      line(
        [
          [room.x + i * 3 * wide, foot],
          [room.x + i * 3 * wide, top],
        ],
        'dimension',
      ),
    ),
    ...rows.flatMap((row, index) => {
      const y = top - (index + 0.5) * tall - 0.8
      const count = row.cells.filter(cell => cell.open).length
      if (index % each !== 0) return []
      return [
        text([room.x - 1.5, y], dayText(row.date), 'small', 'end'),
        text([room.x + room.width + 1.5, y], `${count} h`, 'small', 'start', { fill: 'soft' }),
      ]
    }),
  ]
}
