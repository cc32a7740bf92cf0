import { addDays, instantAt } from '@dawnlift/core/clock'
import type { Limit } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'
import {
  box,
  clipped,
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
  textWidth,
  titleBlock,
} from '../paper/index.js'
import { heightStep, risingLine } from './rising.js'
import { fillOf } from './wall-shapes.js'

export type TimeHeightParts = Pick<Plan, 'job' | 'sections' | 'campaign' | 'soFar'>

interface Axes {
  readonly room: Room
  readonly firstDate: string
  readonly days: number
  readonly zone: string
  readonly top: number
  readonly at: (moment: number, height: number) => PaperPoint
}

/**
 * Height over time, one line a section: rising while it prints, level while it cures. Nights and idle days shown; with a
 * site log, what is over without its tint, and the moment of the log as a line.
 */
export function drawTimeHeight(parts: TimeHeightParts, sheet: Sheet, say: (limit: Limit) => string): Drawing {
  const axes = axesOf(parts, sheet)
  const { campaign, job } = parts
  return {
    title: `${job.name}, campaign`,
    says: `Height of each section over ${axes.days} days; ${campaign.days.length} print days, ${campaign.idleDays.length} idle days.`,
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer('nights', nights(parts, axes)),
      layer('idle', idleDays(parts, axes, say)),
      layer('grid', grid(parts, axes)),
      layer(
        'sections',
        parts.sections.flatMap(section => sectionLine(parts, axes, section.id)),
      ),
      layer('lifts', liftNames(parts, axes)),
      ...(parts.soFar ? [layer('now', nowLine(parts.soFar.now, axes))] : []),
      layer(
        'frame',
        titleBlock(sheet, {
          title: 'Height over time',
          subtitle: `${campaign.days.length} print days. No plan takes fewer than ${campaign.bound.days}: ${campaign.bound.how}.`,
        }),
      ),
    ],
  }
}

function axesOf({ job, campaign }: TimeHeightParts, sheet: Sheet): Axes {
  const zone = job.site.timeZone
  const dates = [...campaign.days.map(day => day.date), ...campaign.idleDays.map(day => day.date)].sort()
  const firstDate = dates[0] ?? job.calendar.firstDay
  const days = dayNumber(firstDate, dates.at(-1) ?? firstDate) + 1
  const outer = drawingRoom(sheet)
  const room = { x: outer.x + 16, y: outer.y + 14, width: outer.width - 22, height: outer.height - 20 }
  // Headroom for the names of the last lifts.
  const top = Math.max(...job.walls.map(wall => wall.top), 0.1) * 1.06
  const zero = instantAt(firstDate, 0, zone)
  const span = instantAt(addDays(firstDate, days), 0, zone) - zero
  return {
    room,
    firstDate,
    days,
    zone,
    top,
    at: (moment, height) => [
      room.x + ((moment - zero) / span) * room.width,
      room.y + (height / top) * room.height,
    ],
  }
}

const dayNumber = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000)

/** Runs of hours with the sun down. */
function nights({ campaign }: TimeHeightParts, axes: Axes): Mark[] {
  const marks: Mark[] = []
  let from: number | undefined
  const first = instantAt(axes.firstDate, 0, axes.zone)
  const last = instantAt(addDays(axes.firstDate, axes.days), 0, axes.zone)
  for (const hour of [...campaign.hours].filter(h => h.start >= first && h.start < last)) {
    if (hour.sunAltitude < 0) from ??= hour.start
    else if (from !== undefined) {
      marks.push(box(axes.at(from, 0), axes.at(hour.start, axes.top), 'none', 'night'))
      from = undefined
    }
  }
  const end = Math.min(last, (campaign.hours.at(-1)?.start ?? last) + 3600)
  if (from !== undefined && end > from)
    marks.push(box(axes.at(from, 0), axes.at(end, axes.top), 'none', 'night'))
  return marks
}

function idleDays({ campaign }: TimeHeightParts, axes: Axes, say: (limit: Limit) => string): Mark[] {
  return campaign.idleDays.flatMap(({ date, why }) => {
    const from = axes.at(instantAt(date, 0, axes.zone), 0)
    const to = axes.at(instantAt(addDays(date, 1), 0, axes.zone), axes.top)
    const words = clipped(say(why), axes.room.height - 4, 'small')
    return [
      box(from, to, 'none', 'shut', { ref: date, title: `no printing: ${say(why)}` }),
      ...hatch(from, to, 3, 'hair'),
      ...(to[0] - from[0] > 4
        ? [
            text([(from[0] + to[0]) / 2 + 0.8, from[1] + 2], words, 'small', 'start', {
              turn: 90,
              halo: true,
            }),
          ]
        : []),
    ]
  })
}

function grid({ job, campaign }: TimeHeightParts, axes: Axes): Mark[] {
  const { room } = axes
  const marks: Mark[] = [box([room.x, room.y], [room.x + room.width, room.y + room.height], 'edge')]
  const step = heightStep(axes.top, job.units)
  for (let height = 0; height <= axes.top + 1e-9; height += step) {
    const y = room.y + (height / axes.top) * room.height
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
  const each = Math.max(1, Math.ceil((axes.days * 10) / room.width))
  for (let day = 0; day < axes.days; day++) {
    const date = addDays(axes.firstDate, day)
    const x = axes.at(instantAt(date, 0, axes.zone), 0)[0]
    marks.push(
      line(
        [
          [x, room.y],
          [x, room.y - 1.5],
        ],
        'thin',
      ),
    )
    const middle = axes.at(instantAt(date, 43_200, axes.zone), 0)[0]
    const [name, number] = [dayText(date).slice(0, 3), dayText(date).slice(4)]
    const print = campaign.days.find(candidate => candidate.date === date)
    if (day % each !== 0) continue
    marks.push(text([middle, room.y - 3.6], name, 'small', 'middle'))
    marks.push(text([middle, room.y - 6.4], number, 'tiny', 'middle', { fill: 'soft' }))
    if (print)
      marks.push(text([middle, room.y - 9.6], `day ${print.number}`, 'tiny', 'middle', { fill: 'accent' }))
  }
  return marks
}

/** The printed height of a section through the campaign. */
function sectionLine({ job, sections, campaign, soFar }: TimeHeightParts, axes: Axes, id: string): Mark[] {
  const h = job.print.layerHeight
  const lifts = campaign.days.flatMap(day => day.lifts).filter(lift => lift.section === id)
  const marks: Mark[] = []
  let before: PaperPoint | undefined
  for (const lift of lifts) {
    const start = axes.at(lift.start, (lift.firstLayer - 1) * h)
    const end = axes.at(lift.end, lift.lastLayer * h)
    if (before) marks.push(line([before, start], 'hidden'))
    const rise = risingLine(lift, (moment, layers) => axes.at(moment, (lift.firstLayer - 1 + layers) * h))
    const isOver = soFar !== undefined && lift.end <= soFar.now
    marks.push(
      line([...rise, [end[0], axes.room.y], [start[0], axes.room.y]], isOver ? 'hair' : 'none', {
        closed: true,
        fill: isOver ? 'void' : fillOf(sections, id),
      }),
    )
    const title = isOver ? `lift ${lift.id}, as it was` : `lift ${lift.id}`
    marks.push(line(rise, isOver ? 'tick' : 'outline', { ref: lift.id, title }))
    before = end
  }
  return marks
}

/** The moment of the site log: on its left what was, on its right what is planned. */
function nowLine(now: number, axes: Axes): Mark[] {
  const [foot, head] = [axes.at(now, 0), axes.at(now, axes.top)]
  if (foot[0] < axes.room.x || foot[0] > axes.room.x + axes.room.width) return []
  return [
    line([foot, head], 'warn'),
    text([head[0] + 0.8, head[1] - 3], 'now', 'small', 'start', { halo: true }),
  ]
}

function liftNames({ job, campaign }: TimeHeightParts, axes: Axes): Mark[] {
  const dayWidth = axes.room.width / axes.days
  if (dayWidth < 5) return []
  const height = dayWidth > 12 ? 'normal' : 'tiny'
  let last = { x: Number.NEGATIVE_INFINITY, y: 0, row: 0 }
  return campaign.days.flatMap(day =>
    day.lifts.map(lift => {
      const [x, y] = axes.at(lift.end, lift.lastLayer * job.print.layerHeight)
      const close = x - last.x < textWidth(lift.id, height) + 0.6 && Math.abs(y - last.y) < 3
      const row = close ? last.row + 1 : 0
      last = { x, y, row }
      return text([x, y + 1.2 - row * 4.6], lift.id, height, row > 0 ? 'start' : 'end', {
        halo: true,
        ref: lift.id,
      })
    }),
  )
}
