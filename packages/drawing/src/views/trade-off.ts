import {
  box,
  type Drawing,
  dayText,
  drawingRoom,
  layer,
  line,
  type Mark,
  type PaperPoint,
  type Room,
  type Sheet,
  text,
  textWidth,
  titleBlock,
} from '../paper/index.js'
import { type DateAxis, dateAxis, dateTicks } from './date-axis.js'

/** One way to run a job. */
export interface TradeOffRow {
  /** What it is called, such as `soonest`. */
  readonly name: string
  /** Local date it is up. */
  readonly date: string
  /** In the job's currency. */
  readonly cost: number
  /** How calm its days are, from 0 (every day to the last minute) to 1 (room in every day). */
  readonly calm: number
  /** What makes it so, such as `24 lifts`; its share in per cent where nothing is said. */
  readonly calmSay?: string
  /** The plan as it stands. */
  readonly isChosen?: boolean
}

export interface TradeOffParts {
  readonly job: string
  readonly currency: string
  readonly rows: readonly TradeOffRow[]
}

/** Ways planned for real as they are drawn: the fewer lifts, the calmer the days. */
export function tradeOffRows<
  Way extends {
    readonly date: string
    readonly cost: number
    readonly lifts: number
    readonly isPlanned: boolean
  },
>(
  ways: readonly Way[],
  wordsFor: (way: Way) => Pick<TradeOffRow, 'name' | 'calmSay'>,
): readonly TradeOffRow[] {
  const fewest = Math.min(...ways.map(way => way.lifts))
  return ways.map(way => ({
    ...wordsFor(way),
    date: way.date,
    cost: way.cost,
    calm: fewest / way.lifts,
    isChosen: way.isPlanned,
  }))
}

interface Axes {
  readonly room: Room
  readonly dates: DateAxis
  readonly least: number
  readonly most: number
  readonly at: (row: TradeOffRow) => PaperPoint
}

/**
 * What sooner costs: each way by its finish and its cost, the ways that none beats in both joined by a line. Calm shows as the
 * hands of a clock filled: the fuller the disc, the calmer the days; told in words too, never by colour alone.
 */
export function drawTradeOff(parts: TradeOffParts, sheet: Sheet): Drawing {
  const axes = axesOf(parts, sheet)
  const best = unbeaten(parts.rows)
  return {
    title: `${parts.job}, finish against cost`,
    says: saysOf(parts, best),
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer('grid', grid(parts, axes)),
      layer('best', stairs(best, axes)),
      layer(
        'ways',
        parts.rows.flatMap(row => way(row, best.includes(row), axes)),
      ),
      layer('names', names(parts, axes)),
      layer(
        'frame',
        titleBlock(sheet, {
          title: 'Finish against cost',
          subtitle:
            'The line joins the ways that no other beats in both. The fuller a disc, the calmer its days. Ringed: the plan as it stands.',
        }),
      ),
    ],
  }
}

/** Ways that no other is sooner or as soon, and cheaper or as cheap, than: soonest first. */
export function unbeaten(rows: readonly TradeOffRow[]): readonly TradeOffRow[] {
  const isBeaten = (row: TradeOffRow) =>
    rows.some(
      other =>
        other.date <= row.date && other.cost <= row.cost && (other.date < row.date || other.cost < row.cost),
    )
  return rows
    .filter(row => !isBeaten(row))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.cost - b.cost))
}

const saysOf = ({ rows, currency }: TradeOffParts, best: readonly TradeOffRow[]): string =>
  `${rows.length} ways by finish and cost. Unbeaten: ${best
    .map(row => `${row.name}, ${row.date}, ${Math.round(row.cost)} ${currency}, ${calmText(row)}`)
    .join('; ')}.`

function axesOf({ rows }: TradeOffParts, sheet: Sheet): Axes {
  const outer = drawingRoom(sheet)
  const room = { x: outer.x + 22, y: outer.y + 9, width: outer.width - 28, height: outer.height - 14 }
  const days = rows.map(row => row.date).sort()
  const dates = dateAxis(room, days[0] ?? '2000-01-01', days.at(-1) ?? '2000-01-01')
  const costs = rows.map(row => row.cost)
  const [low, high] = [Math.min(...costs, Infinity), Math.max(...costs, -Infinity)]
  const air = Math.max((high - low) * 0.15, high * 0.01, 1)
  const [least, most] = rows.length > 0 ? [Math.max(0, low - air), high + air] : [0, 1]
  return {
    room,
    dates,
    least,
    most,
    at: row => [dates.x(row.date), room.y + ((row.cost - least) / (most - least)) * room.height],
  }
}

function grid({ currency }: TradeOffParts, { room, dates, least, most }: Axes): Mark[] {
  const step = costStep(most - least)
  const marks: Mark[] = [box([room.x, room.y], [room.x + room.width, room.y + room.height], 'edge')]
  for (let cost = Math.ceil(least / step) * step; cost <= most; cost += step) {
    const y = room.y + ((cost - least) / (most - least)) * room.height
    marks.push(
      line(
        [
          [room.x, y],
          [room.x + room.width, y],
        ],
        'hair',
      ),
      text([room.x - 1.5, y - 0.8], thousands(cost), 'small', 'end'),
    )
  }
  return [
    ...marks,
    text([room.x - 1.5, room.y + room.height + 1.5], currency, 'small', 'end'),
    ...dateTicks(dates),
  ]
}

/** Some four to nine lines, at ones, twos or fives. */
function costStep(span: number): number {
  const power = 10 ** Math.floor(Math.log10(span / 4))
  return [1, 2, 5, 10].map(factor => factor * power).find(step => span / step <= 9) ?? 10 * power
}

/** `157 900`: a thin gap reads the same in every language. */
const thousands = (value: number): string => String(Math.round(value)).replace(/\B(?=(\d{3})+$)/g, ' ')

/** From one unbeaten way to the next there is nothing to be had in between: a stair, not a slope. */
function stairs(best: readonly TradeOffRow[], axes: Axes): Mark[] {
  const points = best.flatMap((row, i): PaperPoint[] => {
    const [x, y] = axes.at(row)
    const before = best[i - 1]
    return before
      ? [
          [x, axes.at(before)[1]],
          [x, y],
        ]
      : [[x, y]]
  })
  return points.length > 1 ? [line(points, 'accentThick')] : []
}

const RADIUS = 2.4

function way(row: TradeOffRow, isBest: boolean, axes: Axes): Mark[] {
  const at = axes.at(row)
  return [
    ...(row.isChosen
      ? [
          {
            kind: 'circle' as const,
            at,
            radius: RADIUS + 1.3,
            pen: 'warn' as const,
            title: 'the plan as it stands',
          },
        ]
      : []),
    {
      kind: 'circle',
      at,
      radius: RADIUS,
      pen: isBest ? 'accent' : 'thin',
      fill: 'paper',
      ref: row.name,
      title: `${row.name}: ${calmText(row)}`,
    },
    ...filled(at, row.calm),
  ]
}

/** A share of the disc, from twelve o'clock on with the clock, as a fan of short lines' hull. */
function filled([x, y]: PaperPoint, calm: number): Mark[] {
  const share = Math.min(1, Math.max(0, calm))
  if (share < 0.01) return []
  const steps = Math.max(2, Math.round(share * 24))
  const rim = Array.from({ length: steps + 1 }, (_, i): PaperPoint => {
    const turn = (2 * Math.PI * share * i) / steps
    return [x + (RADIUS - 0.5) * Math.sin(turn), y + (RADIUS - 0.5) * Math.cos(turn)]
  })
  return [line(share < 1 ? [[x, y], ...rim] : rim, 'none', { closed: true, fill: 'ink' })]
}

const calmText = ({ calm, calmSay }: TradeOffRow): string => calmSay ?? `calm ${Math.round(100 * calm)} %`

/** Names beside their discs and over the line that may run there, on the side with room, each out of the way of those placed before. */
function names({ rows }: TradeOffParts, axes: Axes): Mark[] {
  const { room } = axes
  const placed = rows.map(row => {
    const [x, y] = axes.at(row)
    return { x0: x - RADIUS, x1: x + RADIUS, y0: y - RADIUS, y1: y + RADIUS }
  })
  const isTaken = (x0: number, x1: number, y0: number, y1: number) =>
    placed.some(other => other.x0 < x1 && x0 < other.x1 && other.y0 < y1 && y0 < other.y1)
  return [...rows]
    .sort((a, b) => a.cost - b.cost)
    .flatMap(row => {
      const [x, y] = axes.at(row)
      const words = [`${row.name}`, `${dayText(row.date)}, ${calmText(row)}`]
      const width = Math.max(...words.map(each => textWidth(each, 'small')))
      const isRight = x + RADIUS + 2 + width < room.x + room.width
      const x0 = isRight ? x + RADIUS + 2 : x - RADIUS - 2 - width
      let base = y
      while (isTaken(x0, x0 + width, base + 0.6, base + 5.6)) base += 0.5
      placed.push({ x0, x1: x0 + width, y0: base + 0.6, y1: base + 5.6 })
      const from: PaperPoint = [isRight ? x0 : x0 + width, base]
      const anchor = isRight ? 'start' : 'end'
      return [
        ...(base - y > 2 ? [line([[x, y], from], 'dimension')] : []),
        text([from[0], base + 3.6], words[0]!, 'small', anchor, { halo: true }),
        text([from[0], base + 1], words[1]!, 'tiny', anchor, { halo: true, fill: 'soft' }),
      ]
    })
}
