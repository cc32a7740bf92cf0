import type { Lift } from '@dawnlift/core/campaign'
import { clockText, localTime } from '@dawnlift/core/clock'
import type { CureStep, WallHeat } from '@dawnlift/core/cure'
import type { Job } from '@dawnlift/core/job'
import {
  box,
  type Drawing,
  dayText,
  drawingRoom,
  type Fill,
  hatch,
  layer,
  lengthText,
  line,
  type Mark,
  type PaperPoint,
  type Room,
  region,
  type Sheet,
  temperatureText,
  text,
  textWidth,
  titleBlock,
} from '../paper/index.js'
import { atOrAbove, type Field, isoLines } from './contours.js'
import { folded, wythes } from './heat-depths.js'

export interface WallHeatParts {
  readonly job: Pick<Job, 'name' | 'site' | 'units'>
  readonly lift: Pick<Lift, 'id'>
  readonly heat: WallHeat
  /** Face to face [m]. */
  readonly thickness: number
  /** What the lift wears and when it is wetted. */
  readonly cover: string
  readonly steps: readonly CureStep[]
  /** Hours shown from the lift's end on; 72 unless said otherwise. */
  readonly hours?: number
}

interface Axes {
  readonly room: Room
  readonly from: number
  readonly until: number
  readonly x: (at: number) => number
  readonly y: (depth: number) => number
}

/** Degrees between isotherms, and the coolest and hottest band there is a tint for. */
const tints: readonly Fill[] = ['heat0', 'heat1', 'heat2', 'heat3', 'heat4', 'heat5', 'heat6', 'heat7']

/** Temperature of a wall by depth and time: bands with their isotherms, covers above, the peak marked. */
export function drawWallHeat(parts: WallHeatParts, sheet: Sheet): Drawing {
  const axes = axesOf(parts, sheet)
  const fields = fieldsOf(parts, axes)
  const levels = levelsOf(parts, fields)
  const hottest = peakIn(parts, axes)
  const peak = `${temperatureText(hottest.temperature, parts.job.units)} at ${momentText(parts, hottest.at)}`
  return {
    title: `${parts.job.name}, heat of lift ${parts.lift.id}`,
    says: `Temperature of the wall of lift ${parts.lift.id} by depth over ${((axes.until - axes.from) / 3600).toFixed(0)} h; hottest ${peak}.`,
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer(
        'bands',
        fields.flatMap(field => bands(field, levels)),
      ),
      layer(
        'isotherms',
        fields.flatMap(field => isotherms(field, levels, parts.job.units)),
      ),
      layer('wall', wallMarks(parts, axes)),
      layer('clock', clockMarks(parts, axes)),
      layer('covers', coverMarks(parts, axes)),
      layer('peak', peakMarks(axes, hottest, `peak ${peak}`)),
      layer(
        'frame',
        titleBlock(sheet, {
          title: `Heat of the wall, lift ${parts.lift.id}`,
          subtitle: `By depth, in its last layer. Reckoned from mix and weather, ${parts.job.units === 'imperial' ? '4 to 7 °F' : '2 to 4 K'} on site: measure. Peak ${peak}.`,
        }),
      ),
    ],
  }
}

function axesOf({ heat, thickness, hours = 72 }: WallHeatParts, sheet: Sheet): Axes {
  const outer = drawingRoom(sheet)
  const room = { x: outer.x + 24, y: outer.y + 9, width: outer.width - 30, height: outer.height - 24 }
  const [from, until] = [heat.start, Math.min(heat.until, heat.start + hours * 3600)]
  return {
    room,
    from,
    until,
    x: at => room.x + ((at - from) / Math.max(1, until - from)) * room.width,
    y: depth => room.y + folded(heat.depths, thickness, depth) * room.height,
  }
}

/** One field a wythe: temperature is only known where there is concrete. */
function fieldsOf({ heat, thickness }: WallHeatParts, axes: Axes): readonly Field[] {
  const moments = heat.trace.at.flatMap((at, index) => (at <= axes.until ? [index] : []))
  const xs = moments.map(index => axes.x(heat.trace.at[index]!))
  return wythes(heat.depths, thickness).map(({ cells, from, to }) => {
    const inner = cells.map(cell => heat.depths[cell]!)
    return {
      xs,
      ys: [from, ...inner, to].map(axes.y),
      values: moments.map(index => {
        const row = heat.profile[index]!
        const temperatures = cells.map(cell => row[cell]!)
        // Faces to the air have their own temperature; faces to a cavity that of their cell.
        const left = from < 1e-9 ? heat.trace.left[index]! : temperatures[0]!
        const right = to > thickness - 1e-9 ? heat.trace.right[index]! : temperatures.at(-1)!
        return [left, ...temperatures, right]
      }),
    }
  })
}

/** Isotherms at round degrees, no more than there are tints for. */
function levelsOf({ job }: WallHeatParts, fields: readonly Field[]): readonly number[] {
  const all = fields.flatMap(field => field.values.flat())
  const [least, most] = [all.reduce((a, b) => Math.min(a, b)), all.reduce((a, b) => Math.max(a, b))]
  const shown = (celsius: number) => (job.units === 'metric' ? celsius : celsius * 1.8 + 32)
  const inside = (degree: number) => (job.units === 'metric' ? degree : (degree - 32) / 1.8)
  const step = [2, 5, 10, 20, 50].find(each => (shown(most) - shown(least)) / each <= tints.length - 1) ?? 50
  const first = Math.ceil(shown(least) / step) * step
  const count = Math.max(0, Math.floor((shown(most) - first) / step) + 1)
  return Array.from({ length: count }, (_, index) => inside(first + index * step))
}

function bands(field: Field, levels: readonly number[]): Mark[] {
  return [-Infinity, ...levels].flatMap((level, index) => {
    const rings = atOrAbove(field, level)
    return rings.length > 0 ? [region(rings, 'none', tints[Math.min(index, tints.length - 1)]!)] : []
  })
}

function isotherms(field: Field, levels: readonly number[], units: 'metric' | 'imperial'): Mark[] {
  return levels.flatMap(level =>
    isoLines(field, level).flatMap(points => {
      return [line(points, 'thin'), ...isothermLabel(points, temperatureText(level, units))]
    }),
  )
}

/** At the middle of its line and along it; none where the line is too short for its words. */
function isothermLabel(points: readonly PaperPoint[], words: string): Mark[] {
  const span = (axis: 0 | 1) =>
    Math.max(...points.map(point => point[axis])) - Math.min(...points.map(point => point[axis]))
  const [wide, tall] = [span(0), span(1)]
  if (Math.max(wide, tall) < textWidth(words, 'tiny') * 1.6) return []
  const middle = points[Math.floor(points.length / 2)]!
  return tall > wide
    ? [text([middle[0] + 0.6, middle[1]], words, 'tiny', 'middle', { halo: true, turn: 90 })]
    : [text([middle[0], middle[1] - 0.6], words, 'tiny', 'middle', { halo: true })]
}

function wallMarks({ heat, thickness, job }: WallHeatParts, { room, y }: Axes): Mark[] {
  const right = room.x + room.width
  const parts = wythes(heat.depths, thickness)
  const cavity = parts[1] ? ([parts[0]!.to, parts[1].from] as const) : undefined
  const cavityWords = cavity ? `cavity of ${lengthText(cavity[1] - cavity[0], job.units)}, drawn narrow` : ''
  return [
    ...parts.map(({ from, to }) => box([room.x, y(from)], [right, y(to)], 'edge')),
    ...(cavity
      ? [
          ...hatch([room.x, y(cavity[0])], [right, y(cavity[1])], 4, 'hair'),
          text([right - 2, (y(cavity[0]) + y(cavity[1])) / 2 - 0.7], cavityWords, 'small', 'end', {
            halo: true,
          }),
        ]
      : []),
    text([room.x - 2, y(0) + 0.4], 'left face', 'small', 'end'),
    text([room.x - 2, y(thickness) - 2], 'right face', 'small', 'end'),
    text([room.x - 2, y(thickness / 2) - 0.7], lengthText(thickness, job.units), 'small', 'end'),
  ]
}

/** Midnights carry their day, the hours between their clock. */
function clockMarks({ job }: WallHeatParts, axes: Axes): Mark[] {
  const { room, from, until, x } = axes
  const zone = job.site.timeZone
  const perHour = room.width / ((until - from) / 3600)
  const each = [1, 2, 3, 6, 12, 24].find(hours => hours * perHour > 9) ?? 24
  const first = Math.ceil(from / 3600) * 3600
  const marks: Mark[] = []
  for (let at = first; at <= until; at += 3600) {
    const clock = clockText(at, zone)
    if (Number(clock.slice(0, 2)) % each !== 0 || !clock.endsWith(':00')) continue
    marks.push(
      line(
        [
          [x(at), room.y],
          [x(at), room.y - 1.2],
        ],
        'thin',
      ),
    )
    const words = clock === '00:00' ? dayText(localTime(at, zone).date) : clock
    marks.push(text([x(at), room.y - 3.8], words, clock === '00:00' ? 'small' : 'tiny', 'middle'))
  }
  return marks
}

/** What the lift wears as a bar above the wall, its wettings as strokes. */
function coverMarks({ cover, steps, job }: WallHeatParts, axes: Axes): Mark[] {
  const { room, x, from, until } = axes
  const y = room.y + room.height + 3
  const on = steps.find(step => step.do === 'cover')?.at
  const off = steps.find(step => step.do === 'uncover')?.at ?? Number.POSITIVE_INFINITY
  const wettings = steps.filter(step => step.do === 'wet' && step.at >= from && step.at <= until)
  const bar =
    on === undefined || on > until
      ? []
      : [
          box([x(Math.max(on, from)), y], [x(Math.min(off, until)), y + 4], 'edge', 'lintel', {
            title: `covered from ${momentText({ job }, on)}`,
          }),
          text([x(Math.max(on, from)) + 1.5, y + 1.3], cover.replaceAll('-', ' '), 'small', 'start', {
            halo: true,
          }),
        ]
  return [
    ...bar,
    ...wettings.map(step =>
      // Rounds told by the day lie as one line from the first to the last.
      line(
        step.until === undefined
          ? [
              [x(step.at), y + 4.6],
              [x(step.at), y + 6.6],
            ]
          : [
              [x(step.at), y + 5.6],
              [x(Math.min(until, Math.max(step.until, step.at + 1800))), y + 5.6],
            ],
        'water',
        { title: step.say },
      ),
    ),
    text([room.x - 2, y + 1.3], 'worn', 'small', 'end'),
    ...(wettings.length > 0 ? [text([room.x - 2, y + 5], 'wetted', 'small', 'end')] : []),
  ]
}

/** The hottest cell or face within the hours shown. */
function peakIn({ heat, thickness }: WallHeatParts, axes: Axes) {
  let best = { temperature: Number.NEGATIVE_INFINITY, at: heat.start, depth: 0 }
  heat.trace.at.forEach((at, index) => {
    if (at > axes.until) return
    const row: readonly (readonly [number, number])[] = [
      [0, heat.trace.left[index]!],
      ...heat.depths.map((depth, cell) => [depth, heat.profile[index]![cell]!] as const),
      [thickness, heat.trace.right[index]!],
    ]
    for (const [depth, temperature] of row)
      if (temperature > best.temperature) best = { temperature, at, depth }
  })
  return best
}

function peakMarks({ room, x, y }: Axes, peak: ReturnType<typeof peakIn>, words: string): Mark[] {
  const at = [x(peak.at), y(peak.depth)] as const
  const toLeft = at[0] + textWidth(words, 'small') + 4 > room.x + room.width
  const below = at[1] > room.y + room.height / 2
  return [
    { kind: 'circle', at, radius: 1.2, pen: 'warn', fill: 'paper' },
    text(
      [at[0] + (toLeft ? -2.4 : 2.4), at[1] + (below ? -2.6 : 1.2)],
      words,
      'small',
      toLeft ? 'end' : 'start',
      {
        halo: true,
        fill: 'warn',
      },
    ),
  ]
}

const momentText = ({ job }: { readonly job: Pick<Job, 'site'> }, at: number): string =>
  `${dayText(localTime(at, job.site.timeZone).date)} ${clockText(at, job.site.timeZone)}`
