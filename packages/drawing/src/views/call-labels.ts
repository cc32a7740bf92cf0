import { clockText } from '@dawnlift/core/clock'
import type { Call } from '@dawnlift/core/trade'
import { clipped, line, type Mark, type PaperPoint, text, textWidth } from '../paper/index.js'
import { block, dayOfCall, type ElevationView } from './elevation-view.js'

interface Label {
  readonly id: string
  readonly ref: string
  readonly calls: readonly Call[]
  readonly anchor: PaperPoint
  readonly words: readonly string[]
  readonly width: number
}

const step = 2.3

/**
 * Calls named above the wall, one label a thing, with leaders down to it. Where there are too many for one row each
 * thing carries its number instead, or its name where there is no room for a list, and the calls are listed above.
 */
export function callLabels(view: ElevationView): Mark[] {
  const [low, high] = block(view, view.along, [view.wall.base, view.wall.top])
  const labels = labelsOf(view)
  const placed = rowOf(labels, low[0] - 8, high[0] + 12)
  return placed ? leaders(placed, high[1]) : schedule(view, labels, high[1])
}

function labelsOf(view: ElevationView): readonly Label[] {
  const things = new Map<string, Call[]>()
  for (const call of view.calls) {
    const id = call.id.split('/')[0]!
    things.set(id, [...(things.get(id) ?? []), call])
  }
  return [...things]
    .map(([id, calls]) => labelOf(view, id, calls))
    .filter(label => label !== undefined)
    .sort((a, b) => a.anchor[0] - b.anchor[0] || a.anchor[1] - b.anchor[1] || (a.id < b.id ? -1 : 1))
}

interface Placed {
  readonly label: Label
  readonly x: number
}

function leaders(placed: readonly Placed[], top: number): Mark[] {
  const y = top + 6
  return [
    ...placed.map(({ label, x }) =>
      line([label.anchor, [label.anchor[0], top + 1.6], [x, y - 1.6]], 'dimension'),
    ),
    ...placed.flatMap(({ label, x }) =>
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

/** Numbers at the things, and above the wall the calls by number, in columns downwards. */
function schedule(view: ElevationView, labels: readonly Label[], top: number): Mark[] {
  const room = view.room.y + view.room.height - top - 3
  const lines = labels.flatMap((label, index) => label.calls.map(call => lineOf(view, call, index + 1)))
  const width = Math.max(...lines.map(words => textWidth(words, 'tiny'))) + 4
  const columns = Math.max(1, Math.floor(view.room.width / width))
  const rows = Math.ceil(lines.length / columns)
  const listed = rows * step <= room
  return [
    ...labels.map((label, index) =>
      text(
        [label.anchor[0], label.anchor[1] + 0.6],
        listed ? String(index + 1) : clipped(label.id, 8, 'tiny'),
        'tiny',
        'middle',
        {
          halo: true,
          ref: label.ref,
        },
      ),
    ),
    ...(listed
      ? lines.map((words, index) =>
          text(
            [
              view.room.x + 2 + Math.floor(index / rows) * width,
              top + 3 + (rows - 1 - (index % rows)) * step,
            ],
            words,
            'tiny',
          ),
        )
      : []),
  ]
}

const lineOf = (view: ElevationView, call: Call, number: number): string =>
  `${String(number).padStart(2, ' ')} ${clipped(call.id, 24, 'tiny')} ${dayOfCall(call.from, view.zone)} ${clockText(call.from, view.zone)}–${clockText(call.until, view.zone)}`

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
  return { id, ref: calls[0]!.id, calls, anchor: view.paper.toPaper([item.at, top]), words, width }
}

/** `cut Thu 16 Jul` over `06:58–08:00`. */
function whenOf(view: ElevationView, call: Call): readonly string[] {
  const part = call.id.split('/')[1]
  return [
    `${part && !/^[0-9]/.test(part) ? `${part} ` : ''}${dayOfCall(call.from, view.zone)}`,
    `${clockText(call.from, view.zone)}–${clockText(call.until, view.zone)}`,
  ]
}

/** Labels side by side in one row, shifted no more than they must; none if one would stray from its thing. */
function rowOf(labels: readonly Label[], left: number, right: number): readonly Placed[] | undefined {
  let end = left
  const placed = labels.map(label => {
    const wanted = Math.min(label.anchor[0] - label.width / 2, right - label.width)
    const from = Math.max(wanted, end)
    end = from + label.width
    return { label, x: from + label.width / 2 }
  })
  return placed.every(({ label, x }) => Math.abs(x - label.anchor[0]) < 14) ? placed : undefined
}
