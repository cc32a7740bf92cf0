import { clockText } from '@dawnlift/core/clock'
import type { Call } from '@dawnlift/core/trade'
import { clipped, line, type Mark, type PaperPoint, text, textWidth } from '../paper/index.js'
import { block, dayOfCall, type ElevationView } from './wall-elevation.js'

interface Label {
  readonly id: string
  readonly ref: string
  readonly anchor: PaperPoint
  readonly words: readonly string[]
  readonly width: number
}

const step = 2.3

/** Calls named above the wall, one label a thing, with leaders down to it. Labels keep their order and do not overlap. */
export function callLabels(view: ElevationView): Mark[] {
  const [low, high] = block(view, view.along, [view.wall.base, view.wall.top])
  const things = new Map<string, Call[]>()
  for (const call of view.calls) {
    const id = call.id.split('/')[0]!
    things.set(id, [...(things.get(id) ?? []), call])
  }
  const labels = [...things]
    .map(([id, calls]) => labelOf(view, id, calls))
    .filter(label => label !== undefined)
  labels.sort((a, b) => a.anchor[0] - b.anchor[0] || (a.id < b.id ? -1 : 1))
  const most = Math.max(...labels.map(label => label.words.length), 1)
  const placed = rowsOf(labels, low[0] - 8, high[0] + 12).map(({ label, x, row }) => ({
    label,
    x,
    y: high[1] + 6 + row * (most * step + 1.4),
  }))
  return [
    ...placed.map(({ label, x, y }) =>
      line([label.anchor, [label.anchor[0], high[1] + 1.6], [x, y - 1.6]], 'dimension'),
    ),
    ...placed.flatMap(({ label, x, y }) =>
      label.words.map((words, index) =>
        text(
          [x, y + (label.words.length - 1 - index) * step],
          words,
          index === 0 ? 'small' : 'tiny',
          'middle',
          {
            halo: true,
            ref: label.ref,
          },
        ),
      ),
    ),
  ]
}

function labelOf(view: ElevationView, id: string, calls: readonly Call[]): Label | undefined {
  const { job } = view.parts
  const embed = job.embeds.find(candidate => candidate.id === id)
  const opening = job.openings.find(candidate => candidate.id === id)
  const column = job.columns.find(candidate => candidate.id === id)
  const item = embed ?? opening ?? column
  if (!item || item.at < view.along[0] || item.at > view.along[1]) return undefined
  const top = embed
    ? embed.bottom + embed.height
    : opening
      ? opening.head + (opening.lintel?.height ?? 0)
      : view.wall.top
  const words = [clipped(id, 22, 'small'), ...calls.flatMap(call => whenOf(view, call))]
  const width =
    Math.max(textWidth(words[0]!, 'small'), ...words.slice(1).map(part => textWidth(part, 'tiny'))) + 1.5
  return { id, ref: calls[0]!.id, anchor: view.paper.toPaper([item.at, top]), words, width }
}

/** `cut Thu 16 Jul` over `06:58–08:00`. */
function whenOf(view: ElevationView, call: Call): readonly string[] {
  const part = call.id.split('/')[1]
  return [
    `${part && !/^[0-9]/.test(part) ? `${part} ` : ''}${dayOfCall(call.from, view.zone)}`,
    `${clockText(call.from, view.zone)}–${clockText(call.until, view.zone)}`,
  ]
}

/** Labels are put in the lowest row where they fit beside the one before, shifted no more than they must. */
function rowsOf(labels: readonly Label[], left: number, right: number) {
  const ends = [left, left, left, left]
  return labels.map(label => {
    const wanted = label.anchor[0] - label.width / 2
    const shift = (row: number) => Math.max(0, ends[row]! - wanted)
    const free = ends.findIndex((_, row) => shift(row) < 4)
    const row = free >= 0 ? free : ends.indexOf(Math.min(...ends))
    const from = Math.min(Math.max(wanted, ends[row]!), Math.max(right - label.width, ends[row]!))
    ends[row] = from + label.width
    return { label, x: from + label.width / 2, row }
  })
}
