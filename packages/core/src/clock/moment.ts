import type { Instant } from '../quantity/index.js'
import { failure, type Result, success } from '../result/index.js'
import { clockText, instantAt, localTime } from './zone.js'

/** Whether this is a day of the calendar, written `2026-07-06`. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false
  const day = new Date(`${text}T00:00:00Z`)
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text)
}

const shape = /^(\d{4}-\d{2}-\d{2})[ T](\d{1,2}):(\d{2})(?::(\d{2}))?$/

/**
 * `2026-07-06 07:13` or `2026-07-06 07:13:20` as the site's clocks show it. When clocks are put back, the first of the two
 * moments. Problems: `clock/moment`, not written like one; `clock/gap`, in the hour that is skipped in spring.
 */
export function momentAt(text: string, zone: string): Result<Instant> {
  const [, date, hour, minute, second = '0'] = shape.exec(text.trim()) ?? []
  if (!date || !isDate(date) || Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59)
    return refused(
      'moment',
      `“${text}” is not a moment; write date and time as the site’s clocks show them: 2026-07-06 07:13.`,
    )
  const clock = Number(hour) * 3600 + Number(minute) * 60 + Number(second)
  const at = instantAt(date, clock, zone)
  const shown = localTime(at, zone)
  if (shown.date !== date || shown.clock !== clock)
    return refused(
      'gap',
      `No clock in ${zone} shows ${text}: clocks are put forward that night. Write a time outside the skipped hour; what would have been then is ${clockText(at, zone)}.`,
    )
  return success(at)
}

const refused = (code: 'moment' | 'gap', say: string): Result<Instant> =>
  failure([{ code: `clock/${code}`, at: '', say }])

/** The other way round, to the second. */
export function momentText(at: Instant, zone: string): string {
  const { date, clock } = localTime(at, zone)
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0')
  const seconds = Math.round(clock % 60) % 60
  return `${date} ${two(clock / 3600)}:${two((clock % 3600) / 60)}${seconds === 0 ? '' : `:${two(seconds)}`}`
}
