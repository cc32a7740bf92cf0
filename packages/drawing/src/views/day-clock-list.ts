import { clockText, localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import {
  box,
  clipped,
  type Fill,
  type Mark,
  type PaperPoint,
  type Pen,
  type Room,
  text,
} from '../paper/index.js'

export type DayClockParts = Pick<Plan, 'job' | 'sections' | 'campaign' | 'calls' | 'cure'>

export const callsOn = (parts: DayClockParts, date: string) => parts.calls.filter(call => call.date === date)

/** The calls of the day in time order, numbered as on the dial, and what the rings mean. */
export function callList(parts: DayClockParts, date: string, [x, y]: PaperPoint, room: Room): Mark[] {
  const zone = parts.job.site.timeZone
  const width = room.x + room.width - x
  const calls = callsOn(parts, date)
  const most = Math.max(2, Math.floor((y - room.y - 22) / 4))
  const shown = calls.length > most ? calls.slice(0, most - 1) : calls
  const row = (words: string, index: number, ref?: string): Mark =>
    text(
      [x, y - index * 4],
      clipped(words, width, 'small'),
      'small',
      'start',
      ref ? { ref } : { fill: 'soft' },
    )
  const rest = calls.length - shown.length
  return [
    ...shown.map((call, index) =>
      row(
        `${index + 1}  ${clockText(call.from, zone)}–${clockText(call.until, zone)}${localTime(call.until, zone).date === date ? '' : ' next day'}  ${call.id} ${call.what}`,
        index,
        call.id,
      ),
    ),
    ...(rest > 0 ? [row(`and ${rest} more`, shown.length)] : []),
    ...legend([x, room.y + 18]),
  ]
}

/** What the rings mean, from the rim inwards. */
function legend([x, y]: PaperPoint): Mark[] {
  const swatch = (index: number, fill: Fill, pen: Pen, words: string): Mark[] => [
    box([x, y - index * 4], [x + 5, y - index * 4 + 2], pen, fill),
    text([x + 7, y - index * 4 + 0.2], words, 'tiny', 'start', { fill: 'soft' }),
  ]
  return [
    ...swatch(0, 'open', 'hair', 'hours open for printing'),
    ...swatch(1, 'shut', 'hair', 'shut by weather (line across)'),
    ...swatch(2, 'paper', 'hidden', 'set-up to wash-out; full: printing'),
    ...swatch(3, 'paper', 'accent', 'calls, numbered as listed'),
    { kind: 'circle', at: [x + 2.5, y - 15], radius: 0.9, pen: 'water', fill: 'water' },
    text([x + 7, y - 15.8], 'wet the walls', 'tiny', 'start', { fill: 'soft' }),
  ]
}
