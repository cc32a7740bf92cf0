import { type CurveFit, type MixFit, stiffness, yieldStress } from '@dawnlift/core/mix'
import {
  box,
  type Drawing,
  drawingRoom,
  layer,
  line,
  type Mark,
  type PaperPoint,
  type Room,
  type Sheet,
  text,
  titleBlock,
  wrapped,
} from '../paper/index.js'

export interface MixFitParts {
  readonly job: { readonly name: string; readonly units: 'metric' | 'imperial' }
  readonly fit: MixFit
}

interface Panel {
  readonly room: Room
  readonly ages: readonly [number, number]
  readonly values: readonly [number, number]
  /** Shown per Pa, and its unit. */
  readonly factor: number
  readonly unit: string
  readonly at: (age: number, value: number) => PaperPoint
}

/** What the mix tests say: each test, the best estimate, the lower band that the plan uses; far-off tests by name. */
export function drawMixFit({ job, fit }: MixFitParts, sheet: Sheet): Drawing {
  const outer = drawingRoom(sheet)
  const half = outer.width / 2
  const rooms = [0, 1].map(index => ({
    x: outer.x + index * half + 20,
    y: outer.y + 12,
    width: half - 26,
    height: outer.height - 24,
  }))
  const scatter = `Tests scatter ${(fit.yield.scatter * 100).toFixed(0)} % about the curve.`
  return {
    title: `${job.name}, tests of ${fit.mix.name}`,
    says: `${fit.yield.points.length} tests of yield stress${fit.stiffness ? ` and ${fit.stiffness.points.length} of stiffness` : ''}; ${fit.outliers.length} far off.`,
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer('yield', curvePanel(fit, fit.yield, yieldStress, rooms[0]!, 'yield stress', job.units)),
      layer(
        'stiffness',
        fit.stiffness
          ? curvePanel(fit, fit.stiffness, stiffness, rooms[1]!, 'stiffness', job.units)
          : untested(rooms[1]!),
      ),
      layer(
        'frame',
        titleBlock(sheet, {
          title: `Mix tests, ${fit.mix.name}`,
          subtitle: `${scatter} The plan uses the lower band: a ${(fit.mix.lowerProbability * 100).toFixed(0)} % chance that the mix does worse.`,
        }),
      ),
    ],
  }
}

const untested = (room: Room): Mark[] => [
  box([room.x, room.y], [room.x + room.width, room.y + room.height], 'hair'),
  ...wrapped(
    'No stiffness tests: the plan lets stiffness follow the yield stress.',
    room.width - 8,
    'normal',
  ).map((words, index) => text([room.x + 4, room.y + room.height / 2 - index * 4], words, 'normal')),
]

/** Both scales by powers of ten: minutes and hours, soft and stiff, all readable. No further than the tests and a little on. */
function panelOf(curve: CurveFit<unknown>, room: Room, units: 'metric' | 'imperial'): Panel {
  const old = curve.points.map(point => point.age).filter(age => age > 0)
  const ages = [Math.min(...old, 3600) / 1.3, Math.max(...old, 60) * 1.15] as const
  const seen = curve.band.filter(({ age }) => age >= ages[0] && age <= ages[1])
  const all = [
    ...curve.points.map(point => point.measured),
    ...seen.flatMap(({ lower, fitted }) => [lower, fitted]),
  ].filter(value => value > 0)
  const values = [Math.min(...all) / 1.3, Math.max(...all) * 1.3] as const
  const [factor, unit] =
    units === 'imperial' ? [1.450377e-4, 'psi'] : values[1] >= 2e6 ? [1e-6, 'MPa'] : [1e-3, 'kPa']
  return {
    room,
    ages,
    values,
    factor,
    unit,
    at: (age, value) => [
      room.x + share(age, ages) * room.width,
      room.y + Math.min(1, Math.max(0, share(value, values))) * room.height,
    ],
  }
}

const share = (value: number, [least, most]: readonly [number, number]): number =>
  Math.log(Math.max(value, least / 10) / least) / Math.log(most / least)

function curvePanel<Growth>(
  fit: MixFit,
  curve: CurveFit<Growth>,
  valueAt: (growth: Growth, age: number) => number,
  room: Room,
  name: string,
  units: 'metric' | 'imperial',
): Mark[] {
  const panel = panelOf(curve, room, units)
  const [young, old] = panel.ages
  const steps = Array.from({ length: 61 }, (_, index) => young * (old / young) ** (index / 60))
  const along = (growth: Growth) => steps.map(age => panel.at(age, valueAt(growth, age)))
  const [best, lower, upper] = [along(curve.growth), along(curve.lower), along(curve.upper)]
  return [
    line([...lower, ...[...upper].reverse()], 'none', { closed: true, fill: 'section0' }),
    ...scales(panel),
    line(best, 'outline', { title: 'best estimate' }),
    line(lower, 'warnThick', { title: 'lower band, used for planning' }),
    ...endNames(panel, best.at(-1), lower.at(-1)),
    ...tests(fit, curve, panel),
    text([room.x + 2, room.y + room.height + 2], `${name}, ${panel.unit}`, 'normal'),
  ]
}

function endNames({ room }: Panel, best: PaperPoint | undefined, lower: PaperPoint | undefined): Mark[] {
  if (!best || !lower) return []
  const x = room.x + room.width - 2
  const apart = Math.max(0, 3.4 - (best[1] - lower[1])) / 2
  return [
    text([x, Math.min(best[1] + 1.4 + apart, room.y + room.height - 2.6)], 'best estimate', 'small', 'end', {
      halo: true,
    }),
    text([x, lower[1] - 3.4 - apart], 'lower band', 'small', 'end', { halo: true, fill: 'warn' }),
  ]
}

/** Tests as rings; those far off the curve as crosses with their place in the file. */
function tests(fit: MixFit, curve: CurveFit<unknown>, panel: Panel): Mark[] {
  const far = new Set(fit.outliers)
  return curve.points.flatMap((point): Mark[] => {
    const [x, y] = panel.at(point.age, point.measured)
    const told = `${point.at}: ${(point.measured * panel.factor).toPrecision(3)} ${panel.unit} at ${(point.age / 60).toFixed(0)} min`
    if (!far.has(point.at))
      return [{ kind: 'circle', at: [x, y], radius: 0.8, pen: 'thin', fill: 'paper', title: told }]
    const left = x > panel.room.x + panel.room.width / 2
    return [
      line(
        [
          [x - 1, y - 1],
          [x + 1, y + 1],
        ],
        'warn',
        { title: told },
      ),
      line(
        [
          [x - 1, y + 1],
          [x + 1, y - 1],
        ],
        'warn',
        { title: told },
      ),
      text([x + (left ? -2 : 2), y - 0.7], point.at, 'small', left ? 'end' : 'start', {
        halo: true,
        fill: 'warn',
      }),
    ]
  })
}

function scales({ room, ages, values, factor, at }: Panel): Mark[] {
  const [right, top] = [room.x + room.width, room.y + room.height]
  return [
    box([room.x, room.y], [right, top], 'edge'),
    ...ticks(values[0] * factor, values[1] * factor).flatMap(value => {
      const y = at(ages[0], value / factor)[1]
      return [
        line(
          [
            [room.x, y],
            [right, y],
          ],
          'hair',
        ),
        text([room.x - 1.5, y - 0.8], String(value), 'small', 'end'),
      ]
    }),
    ...ticks(ages[0] / 60, ages[1] / 60).flatMap(minutes => {
      const x = at(minutes * 60, values[0])[0]
      return [
        line(
          [
            [x, room.y],
            [x, top],
          ],
          'hair',
        ),
        text([x, room.y - 3.8], String(minutes), 'small', 'middle'),
      ]
    }),
    text([right, room.y - 7], 'age in minutes at the reference temperature', 'small', 'end', {
      fill: 'soft',
    }),
  ]
}

/** 1, 2 and 5 of every power of ten between two values. */
function ticks(least: number, most: number): readonly number[] {
  const powers = Array.from(
    { length: Math.ceil(Math.log10(most)) - Math.floor(Math.log10(least)) + 1 },
    (_, index) => Math.floor(Math.log10(least)) + index,
  )
  return powers
    .flatMap(power => [1, 2, 5].map(each => Number((each * 10 ** power).toPrecision(1))))
    .filter(value => value >= least && value <= most)
}
