import { addDays } from '@dawnlift/core/clock'
import { dayText, line, type Mark, type Room, text } from '../paper/index.js'

/** Dates from left to right, each day as wide as the next. */
export interface DateAxis {
  readonly room: Room
  readonly first: string
  readonly days: number
  /** Middle of a day [mm]. */
  readonly x: (date: string) => number
}

export function dateAxis(room: Room, first: string, last: string): DateAxis {
  const days = daysBetween(first, last) + 1
  return { room, first, days, x: date => room.x + ((daysBetween(first, date) + 0.5) / days) * room.width }
}

export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000)

/** Ticks below, named as far as there is room for names. */
export function dateTicks({ room, first, days, x }: DateAxis): Mark[] {
  const each = Math.max(1, Math.ceil((days * 16) / room.width))
  return Array.from({ length: days }, (_, day) => addDays(first, day)).flatMap((date, day) => [
    line(
      [
        [x(date), room.y],
        [x(date), room.y - (day % each === 0 ? 1.4 : 0.7)],
      ],
      'thin',
    ),
    ...(day % each === 0 ? [text([x(date), room.y - 4], dayText(date), 'small', 'middle')] : []),
  ])
}
