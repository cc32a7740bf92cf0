import type { Lift } from '@dawnlift/core/campaign'
import type { Job } from '@dawnlift/core/job'
import type { StandChart, StandMoment } from '@dawnlift/core/stand'
import {
  box,
  type Drawing,
  drawingRoom,
  layer,
  lengthText,
  line,
  type Mark,
  type PaperPoint,
  type Pen,
  type Room,
  type Sheet,
  text,
  titleBlock,
} from '../paper/index.js'
import { heightStep } from './rising.js'

export interface StandParts {
  readonly job: Pick<Job, 'name' | 'units' | 'print'>
  readonly lift: Pick<Lift, 'id' | 'firstLayer' | 'lastLayer'>
  readonly chart: StandChart
}

interface Axes {
  readonly room: Room
  readonly until: number
  readonly top: number
  readonly at: (time: number, height: number) => PaperPoint
}

/** Height of a fresh lift over its hours, under the heights that would squash it and lean it over. */
export function drawStand(parts: StandParts, sheet: Sheet): Drawing {
  const axes = axesOf(parts, sheet)
  const tight = tightest(parts.chart.moments)
  return {
    title: `${parts.job.name}, standing of lift ${parts.lift.id}`,
    says: `Lift ${parts.lift.id} over ${(axes.until / 60).toFixed(0)} min: ${governsWords(parts, tight)}.`,
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer('grid', grid(parts, axes)),
      layer('lift', liftShape(parts, axes)),
      layer('capacity', capacityMarks(parts, axes)),
      layer('tightest', tightestMarks(axes, tight)),
      layer(
        'frame',
        titleBlock(sheet, {
          title: `Standing of lift ${parts.lift.id}`,
          subtitle: `Tightest: ${governsWords(parts, tight)}. Screening from the lower band of the mix tests; a licensed engineer decides.`,
        }),
      ),
    ],
  }
}

function axesOf({ chart }: StandParts, sheet: Sheet): Axes {
  const outer = drawingRoom(sheet)
  const room = { x: outer.x + 20, y: outer.y + 12, width: outer.width - 26, height: outer.height - 16 }
  const last = chart.moments.at(-1)
  const until = Math.max(60, last?.time ?? 0)
  const height = last?.height ?? 0.1
  // Capacity far over the lift says no more than that it is far over.
  const top = 1.1 * Math.min(Math.max(height, ...chart.moments.map(m => m.allowedHeight)), 2.5 * height)
  return {
    room,
    until,
    top,
    at: (time, up) => [
      room.x + (time / until) * room.width,
      room.y + (Math.min(up, top) / top) * room.height,
    ],
  }
}

/** Where printed height comes nearest to what is allowed. */
const tightest = (moments: readonly StandMoment[]): StandMoment | undefined =>
  moments.reduce<StandMoment | undefined>(
    (best, moment) =>
      !best || moment.allowedHeight / moment.height < best.allowedHeight / best.height ? moment : best,
    undefined,
  )

function governsWords({ job }: StandParts, moment: StandMoment | undefined): string {
  if (!moment) return 'no layer'
  const how = moment.governs === 'collapse' ? 'squashes first' : 'leans over first'
  return `${moment.place} ${how}, ${lengthText(moment.height, job.units)} of ${lengthText(moment.allowedHeight, job.units)} allowed after ${(moment.time / 60).toFixed(0)} min`
}

function grid({ job }: StandParts, axes: Axes): Mark[] {
  const { room, until, top } = axes
  const marks: Mark[] = [box([room.x, room.y], [room.x + room.width, room.y + room.height], 'edge')]
  const step = heightStep(top, job.units)
  for (let up = 0; up <= top + 1e-9; up += step) {
    const y = axes.at(0, up)[1]
    marks.push(
      line(
        [
          [room.x, y],
          [room.x + room.width, y],
        ],
        'hair',
      ),
    )
    marks.push(text([room.x - 1.5, y - 0.8], lengthText(up, job.units), 'small', 'end'))
  }
  const each =
    [300, 600, 900, 1800, 3600, 7200].find(seconds => (until / seconds) * 12 < room.width) ?? 14_400
  for (let time = 0; time <= until; time += each) {
    const x = axes.at(time, 0)[0]
    marks.push(
      line(
        [
          [x, room.y],
          [x, room.y - 1.2],
        ],
        'thin',
      ),
    )
    marks.push(text([x, room.y - 3.8], `${time / 60}`, 'small', 'middle'))
  }
  marks.push(
    text([room.x + room.width, room.y - 7], 'minutes since the lift began', 'small', 'end', { fill: 'soft' }),
  )
  return marks
}

/** A step a layer, as it is laid. */
function liftShape({ chart, lift }: StandParts, axes: Axes): Mark[] {
  const steps = chart.moments.flatMap((moment, index): PaperPoint[] => {
    const below = chart.moments[index - 1]?.height ?? 0
    return [axes.at(moment.time, below), axes.at(moment.time, moment.height)]
  })
  const foot = axes.at(0, 0)
  const end = axes.at(axes.until, 0)
  return [
    line([foot, ...steps, end], 'none', { closed: true, fill: 'section0' }),
    line([foot, ...steps], 'outline', { ref: lift.id, title: `lift ${lift.id}` }),
    text([end[0] - 2, axes.at(0, (chart.moments.at(-1)?.height ?? 0) / 3)[1]], 'printed', 'normal', 'end', {
      halo: true,
    }),
  ]
}

interface Capacity {
  readonly words: string
  readonly pen: Pen
  readonly of: (moment: StandMoment) => number
}

const capacities: readonly Capacity[] = [
  { words: 'squashes', pen: 'hidden', of: moment => moment.collapseHeight },
  { words: 'leans over', pen: 'axis', of: moment => moment.bucklingHeight },
  { words: 'allowed', pen: 'warnThick', of: moment => moment.allowedHeight },
]

/** Lines are cut where they leave the chart; one wholly over it is told at its top edge. */
function capacityMarks({ chart, job }: StandParts, axes: Axes): Mark[] {
  const { room, top } = axes
  let over = 0
  const ends: number[] = []
  return capacities.flatMap(({ words, pen, of }) => {
    const inside = chart.moments.filter(moment => of(moment) <= top)
    if (inside.length === 0) {
      const least = Math.min(...chart.moments.map(of))
      over += 1
      return [
        text(
          [room.x + 2, room.y + room.height - 0.4 - over * 3],
          `↑ ${words} from ${lengthText(least, job.units)} up`,
          'small',
          'start',
          { halo: true },
        ),
      ]
    }
    const points = chart.moments.map(moment => axes.at(moment.time, of(moment)))
    const at = points[chart.moments.indexOf(inside.at(-1)!)]!
    // Names keep clear of each other at the ends of their lines.
    let y = Math.min(at[1] + 1.2, room.y + room.height - 3)
    while (ends.some(end => Math.abs(end - y) < 3)) y -= 3
    ends.push(y)
    return [
      line(points, pen, { title: words }),
      text([Math.min(at[0], room.x + room.width) - 2, y], words, 'small', 'end', {
        halo: true,
        fill: pen === 'warnThick' ? 'warn' : 'ink',
      }),
    ]
  })
}

function tightestMarks(axes: Axes, moment: StandMoment | undefined): Mark[] {
  if (!moment) return []
  const [from, to] = [axes.at(moment.time, moment.height), axes.at(moment.time, moment.allowedHeight)]
  const right = from[0] > axes.room.x + axes.room.width / 2
  const governs = `${moment.governs === 'collapse' ? 'squash' : 'lean'}: ${moment.place}`
  const factor = `${(moment.allowedHeight / moment.height).toFixed(2)} × what is printed`
  const x = from[0] + (right ? -2 : 2)
  const anchor = right ? 'end' : 'start'
  // Too little room between the two lines: the words go under the lift's top.
  const middle = Math.abs(to[1] - from[1]) > 10 ? (from[1] + to[1]) / 2 : from[1] - 6
  return [
    line([from, to], 'accent'),
    { kind: 'circle', at: from, radius: 0.8, pen: 'accent', fill: 'paper' },
    text([x, middle + 0.6], governs, 'small', anchor, { halo: true, fill: 'accent' }),
    text([x, middle - 2.2], factor, 'tiny', anchor, { halo: true, fill: 'accent' }),
  ]
}
