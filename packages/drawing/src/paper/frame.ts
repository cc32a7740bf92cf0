import type { Mark, PaperPoint } from './drawing.js'
import type { PaperMap } from './fit.js'
import { box, clipped, line, text, wrapped } from './marks.js'
import { frameMargin, type Sheet, titleHeight } from './sheet.js'

export interface FrameWords {
  readonly title: string
  readonly subtitle?: string
  readonly scaleText?: string
}

/** Frame, notes and title block; a bare figure has none. */
export function titleBlock(sheet: Sheet, words: FrameWords): Mark[] {
  if (!sheet.frame) return []
  const { width, height } = sheet
  const left = frameMargin
  const right = width - frameMargin
  const foot = frameMargin
  const top = foot + titleHeight
  const second = left + (right - left) * 0.44
  const third = right - 42
  const job = wrapped(sheet.words.job, second - left - 4, 'large').slice(0, 2)
  return [
    box([left, foot], [right, height - frameMargin], 'outline'),
    line(
      [
        [left, top],
        [right, top],
      ],
      'edge',
    ),
    line(
      [
        [second, foot],
        [second, top],
      ],
      'thin',
    ),
    line(
      [
        [third, foot],
        [third, top],
      ],
      'thin',
    ),
    ...job.map((words, index) => text([left + 2, top - 5 - index * 4.4], words, 'large')),
    text([left + 2, foot + 2], 'Heights over the slab. Layer 1 lies on the slab.', 'tiny', 'start', {
      fill: 'soft',
    }),
    text([second + 2, top - 5.5], clipped(words.title, third - second - 4, 'large'), 'large'),
    ...(words.subtitle
      ? wrapped(words.subtitle, third - second - 4, 'small')
          .slice(0, 3)
          .map((part, index) =>
            text([second + 2, top - 9 - index * 2.8], part, 'small', 'start', { fill: 'soft' }),
          )
      : []),
    text([third + 2, top - 4], `revision ${clipped(sheet.words.revision, 24, 'small')}`, 'small'),
    text([third + 2, top - 7.5], clipped(sheet.words.date, 38, 'small'), 'small'),
    ...(words.scaleText ? [text([third + 2, top - 11], words.scaleText, 'small')] : []),
    ...(sheet.words.number ? [text([right - 2, foot + 2], sheet.words.number, 'normal', 'end')] : []),
    ...(sheet.words.notes ?? []).map((note, index, all) =>
      text(
        [left + 2, top + 1.6 + 3 * (all.length - 1 - index)],
        clipped(note, right - left - 4, 'small'),
        'small',
        'start',
        {
          fill: 'warn',
        },
      ),
    ),
  ]
}

/** A bar to lay a ruler against: stays right when the copy is enlarged. */
export function scaleBar(paper: PaperMap, at: PaperPoint, units: 'metric' | 'imperial'): Mark[] {
  const metre = units === 'metric' ? 1 : 0.3048
  const name = units === 'metric' ? 'm' : 'ft'
  const steps = units === 'metric' ? [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50] : [1, 2, 5, 10, 20, 50, 100]
  const step = steps.find(candidate => paper.length(candidate * metre) >= 8) ?? steps.at(-1)!
  const width = paper.length(step * metre)
  const marks: Mark[] = [0, 1, 2, 3].map(index =>
    box(
      [at[0] + index * width, at[1]],
      [at[0] + (index + 1) * width, at[1] + 1.2],
      'thin',
      index % 2 ? 'paper' : 'ink',
    ),
  )
  const label = (index: number) => String(Math.round(index * step * 10) / 10)
  return [
    ...marks,
    ...[0, 1, 2, 3].map(index => text([at[0] + index * width, at[1] + 2], label(index), 'tiny', 'middle')),
    text([at[0] + 4 * width, at[1] + 2], `${label(4)} ${name}`, 'tiny', 'middle'),
  ]
}

/** Points to true north. `yAxisBearing`: of the building's y axis, clockwise from north [rad]. */
export function northArrow(at: PaperPoint, yAxisBearing: number): Mark[] {
  // The y axis goes up the sheet; north lies as far to its left as the axis lies right of north.
  const turned = (along: number, aside: number): PaperPoint => {
    const angle = Math.PI / 2 + yAxisBearing
    return [
      at[0] + along * Math.cos(angle) - aside * Math.sin(angle),
      at[1] + along * Math.sin(angle) + aside * Math.cos(angle),
    ]
  }
  const label = turned(8.2, 0)
  return [
    { kind: 'circle', at, radius: 5.5, pen: 'thin' },
    line([turned(5.5, 0), turned(-4.5, 1.6), turned(-3.2, 0)], 'thin', { closed: true, fill: 'ink' }),
    line([turned(5.5, 0), turned(-4.5, -1.6), turned(-3.2, 0)], 'thin', { closed: true, fill: 'paper' }),
    text([label[0], label[1] - 0.9], 'N', 'normal', 'middle'),
  ]
}
