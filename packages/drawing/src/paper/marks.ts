import type { LineMark, Mark, PaperPoint, RegionMark, TextMark } from './drawing.js'
import { type Fill, type Pen, type TextHeight, textHeights, textWidth } from './pens.js'

/** Short ways to make marks. */
export const line = (points: readonly PaperPoint[], pen: Pen, more: Partial<LineMark> = {}): LineMark => ({
  kind: 'line',
  points,
  closed: false,
  pen,
  ...more,
})

export const box = (
  [x0, y0]: PaperPoint,
  [x1, y1]: PaperPoint,
  pen: Pen,
  fill?: Fill,
  more: Partial<LineMark> = {},
): LineMark => ({
  kind: 'line',
  points: [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ],
  closed: true,
  pen,
  ...(fill ? { fill } : {}),
  ...more,
})

export const text = (
  at: PaperPoint,
  words: string,
  height: TextHeight,
  anchor: TextMark['anchor'] = 'start',
  more: Partial<TextMark> = {},
): TextMark => ({ kind: 'text', at, text: words, height, anchor, ...more })

export const region = (rings: readonly (readonly PaperPoint[])[], pen: Pen, fill: Fill): RegionMark => ({
  kind: 'region',
  rings,
  pen,
  fill,
})

/** Parallel lines over a rectangle at 45°, so that a fill can be told without colour. */
export function hatch([x0, y0]: PaperPoint, [x1, y1]: PaperPoint, gap: number, pen: Pen): Mark[] {
  const marks: Mark[] = []
  const [left, right] = [Math.min(x0, x1), Math.max(x0, x1)]
  const [foot, top] = [Math.min(y0, y1), Math.max(y0, y1)]
  // Lines x − y = c, on a grid of the sheet so that neighbouring rectangles hatch through.
  const first = Math.ceil((left - top) / gap) * gap
  for (let c = first; c < right - foot; c += gap) {
    const from: PaperPoint = [Math.max(left, foot + c), Math.max(foot, left - c)]
    const to: PaperPoint = [Math.min(right, top + c), Math.min(top, right - c)]
    if (to[0] - from[0] > 0.05) marks.push(line([from, to], pen))
  }
  return marks
}

/** A dimension: line, slanted ends, its measure in the middle, above the line as read from below or the right. */
export function dimension(from: PaperPoint, to: PaperPoint, words: string): Mark[] {
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const length = Math.hypot(dx, dy)
  if (length < 1e-6) return []
  const upright = Math.abs(dy) > Math.abs(dx)
  const slant = (at: PaperPoint): Mark =>
    line(
      [
        [at[0] - 0.7, at[1] - 0.7],
        [at[0] + 0.7, at[1] + 0.7],
      ],
      'tick',
    )
  const middle: PaperPoint = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  const fits = textWidth(words, 'small') < length - 1
  const offset = fits ? 0.8 : 0.8
  const at: PaperPoint = upright ? [middle[0] - offset, middle[1]] : [middle[0], middle[1] + offset]
  return [
    line([from, to], 'dimension'),
    slant(from),
    slant(to),
    text(at, words, fits ? 'small' : 'tiny', 'middle', upright ? { turn: 90, halo: true } : { halo: true }),
  ]
}

/** Breaks words into lines of at most `room` millimetres; a word too long for a line is split. */
export function wrapped(words: string, room: number, height: TextHeight): readonly string[] {
  const most = Math.max(4, Math.floor(room / textWidth('x', height)))
  const lines: string[] = []
  let current = ''
  for (const word of words.split(/\s+/).flatMap(w => chunks(w, most))) {
    if (current && [...current].length + 1 + [...word].length > most) {
      lines.push(current)
      current = word
    } else current = current ? `${current} ${word}` : word
  }
  return current ? [...lines, current] : lines
}

function chunks(word: string, most: number): string[] {
  const letters = [...word]
  const parts: string[] = []
  for (let index = 0; index < letters.length; index += most)
    parts.push(letters.slice(index, index + most).join(''))
  return parts
}

/** Cut to the room there is, ending in an ellipsis. */
export function clipped(words: string, room: number, height: TextHeight): string {
  const most = Math.floor(room / textWidth('x', height))
  const letters = [...words]
  return letters.length <= most ? words : `${letters.slice(0, Math.max(1, most - 1)).join('')}…`
}

/** Lines of text downwards from a point. */
export const paragraph = (
  at: PaperPoint,
  lines: readonly string[],
  height: TextHeight,
  more: Partial<TextMark> = {},
): readonly TextMark[] =>
  lines.map((words, index) =>
    text([at[0], at[1] - index * textHeights[height] * 1.35], words, height, 'start', more),
  )
