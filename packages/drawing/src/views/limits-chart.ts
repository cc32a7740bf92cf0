import type { Lift } from '@dawnlift/core/campaign'
import { clockText, localTime } from '@dawnlift/core/clock'
import type { Job } from '@dawnlift/core/job'
import type { Limit, LimitKind } from '@dawnlift/core/limit'
import type { PrintHour } from '@dawnlift/core/weather'
import {
  box,
  type Drawing,
  dayText,
  drawingRoom,
  hatch,
  layer,
  lengthText,
  line,
  type Mark,
  type PaperPoint,
  type Room,
  type Sheet,
  text,
  titleBlock,
  wrapped,
} from '../paper/index.js'
import { heightStep, risingLine } from './rising.js'

export interface LimitsParts {
  readonly job: Job
  readonly lift: Lift
  readonly hours: readonly PrintHour[]
  /** Words for a limit. */
  readonly say: (limit: Limit) => string
}

interface Axes {
  readonly room: Room
  readonly from: number
  readonly to: number
  /** Metres over the lift's foot at the top of the chart. */
  readonly top: number
  readonly at: (moment: number, height: number) => PaperPoint
}

/**
 * Why only this much: the lift climbing over the hours, under what each limit alone would have allowed. Limits of height
 * are lines across, limits of the clock lines upright; the one that stopped the lift is the heavy one.
 */
export function drawLimits(parts: LimitsParts, sheet: Sheet): Drawing {
  const { job, lift } = parts
  const axes = axesOf(parts, sheet)
  const date = localTime(lift.start, job.site.timeZone).date
  return {
    title: `${job.name}, limits of lift ${lift.id}`,
    says: `Lift ${lift.id} gained ${lift.lastLayer - lift.firstLayer + 1} layers; it stopped for: ${parts.say(lift.binding)}.`,
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer('hours', shutHours(parts, axes)),
      layer('grid', grid(parts, axes)),
      layer('lift', liftShape(parts, axes)),
      layer('limits', limitLines(parts, axes)),
      layer(
        'frame',
        titleBlock(sheet, {
          title: `Limits of lift ${lift.id}`,
          subtitle: `${dayText(date)}, layers ${lift.firstLayer}–${lift.lastLayer}. Heavy: what stopped it. Thin: what would have stopped it next.`,
        }),
      ),
    ],
  }
}

function axesOf({ job, lift }: LimitsParts, sheet: Sheet): Axes {
  const outer = drawingRoom(sheet)
  const room = { x: outer.x + 18, y: outer.y + 9, width: outer.width - 22, height: outer.height - 13 }
  const clocks = [lift.binding, ...lift.runnersUp.map(r => r.limit)].flatMap(limit =>
    limit.at === undefined ? [] : [limit.at],
  )
  const hour = (moment: number, round: (x: number) => number) => round(moment / 3600) * 3600
  const from = hour(Math.min(lift.start, ...clocks) - 1800, Math.floor)
  const to = hour(
    Math.max(lift.end + 1800, ...clocks.filter(c => c < lift.end + 12 * 3600).map(c => c + 900)),
    Math.ceil,
  )
  const layers = Math.max(
    lift.wishedLayers,
    lift.lastLayer - lift.firstLayer + 1,
    ...lift.runnersUp.map(r => r.layers),
  )
  const most = Math.min(layers, 2 * (lift.lastLayer - lift.firstLayer + 1))
  const top = most * job.print.layerHeight * 1.12
  return {
    room,
    from,
    to,
    top,
    at: (moment, height) => [
      room.x + ((moment - from) / (to - from)) * room.width,
      room.y + (Math.min(height, top) / top) * room.height,
    ],
  }
}

const shutHours = ({ hours }: LimitsParts, axes: Axes): Mark[] =>
  hours
    .filter(hour => !hour.open && hour.start + 3600 > axes.from && hour.start < axes.to)
    .flatMap(hour => {
      const from = axes.at(Math.max(axes.from, hour.start), 0)
      const to = axes.at(Math.min(axes.to, hour.start + 3600), axes.top)
      const why = hour.limits.filter(limit => limit.demand > limit.capacity).map(limit => limit.kind)
      return [
        box(from, to, 'none', 'shut', { title: `shut: ${why.join(', ')}` }),
        ...hatch(from, to, 3, 'hair'),
      ]
    })

function grid({ job }: LimitsParts, axes: Axes): Mark[] {
  const { room } = axes
  const marks: Mark[] = [box([room.x, room.y], [room.x + room.width, room.y + room.height], 'edge')]
  const step = heightStep(axes.top, job.units)
  for (let height = 0; height <= axes.top; height += step) {
    const y = axes.at(axes.from, height)[1]
    marks.push(
      line(
        [
          [room.x, y],
          [room.x + room.width, y],
        ],
        'hair',
      ),
    )
    marks.push(text([room.x - 1.5, y - 0.8], lengthText(height, job.units), 'small', 'end'))
  }
  const hours = (axes.to - axes.from) / 3600
  const each = Math.max(1, Math.ceil((hours * 9) / room.width))
  for (let hour = 0; hour <= hours; hour += each) {
    const x = axes.at(axes.from + hour * 3600, 0)[0]
    marks.push(
      line(
        [
          [x, room.y],
          [x, room.y - 1.2],
        ],
        'thin',
      ),
    )
    marks.push(
      text([x, room.y - 3.8], clockText(axes.from + hour * 3600, job.site.timeZone), 'small', 'middle'),
    )
  }
  return marks
}

function liftShape({ job, lift }: LimitsParts, axes: Axes): Mark[] {
  const h = job.print.layerHeight
  const steps = risingLine(lift, (moment, layers) => axes.at(moment, layers * h))
  const [x0, x1] = [steps[0]![0], steps.at(-1)![0]]
  return [
    line([...steps, [x1, axes.room.y], [x0, axes.room.y]], 'none', { closed: true, fill: 'section0' }),
    line(steps, 'outline', { ref: lift.id, title: `lift ${lift.id}` }),
  ]
}

interface LimitLine {
  readonly limit: Limit
  readonly height: number
  readonly binding: boolean
}

/** Limits that come with the hour; the others come with height, whenever it is reached. */
const byClock: ReadonlySet<LimitKind> = new Set<LimitKind>([
  'mix-hot',
  'mix-cold',
  'air-cold',
  'evaporation',
  'wind',
  'gust',
  'rain',
  'crew-heat',
  'daylight',
  'permitted-hours',
  'shift',
  'delivery',
])

/** Binding limit heavy, the others thin; a limit of the clock also gets its upright line where it bites. Names lie over all lines. */
function limitLines({ job, lift, say }: LimitsParts, axes: Axes): Mark[] {
  const h = job.print.layerHeight
  const gained = (lift.lastLayer - lift.firstLayer + 1) * h
  const lines: LimitLine[] = [
    { limit: lift.binding, height: gained, binding: true },
    ...lift.runnersUp.map(({ limit, layers }) => ({ limit, height: layers * h, binding: false })),
  ].sort((a, b) => a.height - b.height)
  const heights = labelHeights(lines, axes)
  return [
    ...lines.flatMap(each => limitMarks(each, axes)),
    ...lines.flatMap((each, index) => limitName(each, heights[index]!, say, axes)),
  ]
}

/** Room a name takes upwards [mm]. */
const NAME = 3

/** Names climb out of each other's way from their own lines; what would pass the top of the chart goes back down. */
function labelHeights(lines: readonly LimitLine[], axes: Axes): readonly number[] {
  const top = axes.room.y + axes.room.height - 2.6
  const placed: number[] = []
  for (const { height } of lines)
    placed.push(Math.max(axes.at(axes.from, height)[1] + 1, (placed.at(-1) ?? axes.room.y) + NAME))
  for (let index = placed.length - 1, most = top; index >= 0; index--, most -= NAME)
    placed[index] = most = Math.min(placed[index]!, most)
  return placed
}

function limitMarks({ limit, height, binding }: LimitLine, axes: Axes): Mark[] {
  const y = axes.at(axes.from, height)[1]
  const pen = binding ? 'warnThick' : 'hidden'
  const { x, width } = axes.room
  const across =
    height > axes.top
      ? []
      : [
          line(
            [
              [x, y],
              [x + width, y],
            ],
            pen,
          ),
        ]
  const bites =
    byClock.has(limit.kind) && limit.at !== undefined && limit.at > axes.from && limit.at < axes.to
      ? [line([axes.at(limit.at, 0), axes.at(limit.at, Math.min(height, axes.top))], pen)]
      : []
  return [...across, ...bites]
}

function limitName(
  { limit, height, binding }: LimitLine,
  at: number,
  say: LimitsParts['say'],
  axes: Axes,
): Mark[] {
  const { x, width } = axes.room
  const y = axes.at(axes.from, height)[1]
  const off = height > axes.top
  const [first, ...more] = wrapped(`${off ? '↑ ' : ''}${say(limit)}`, width - 6, 'small')
  const words = more.length ? `${first}…` : (first ?? '')
  const strayed = Math.abs(at - y) > 2 && !off
  return [
    ...(strayed
      ? [
          line(
            [
              [x + 1, y],
              [x + 1, at],
            ],
            'dimension',
          ),
        ]
      : []),
    text([x + 2, at], words, 'small', 'start', { halo: true, fill: binding ? 'warn' : 'ink' }),
  ]
}
