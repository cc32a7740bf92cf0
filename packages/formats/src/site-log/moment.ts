import { clockText, instantAt, localTime } from '@dawnlift/core/clock'
import type { Instant } from '@dawnlift/core/quantity'
import { failure, type Result, success } from '@dawnlift/core/result'

const shape = /^(\d{4}-\d{2}-\d{2})[ T](\d{1,2}):(\d{2})(?::(\d{2}))?$/

/** `2026-07-06 07:13` as the site's clocks show it. When clocks are put back, the first of the two moments. */
export function momentAt(text: string, zone: string): Result<Instant> {
  const [, date, hour, minute, second = '0'] = shape.exec(text.trim()) ?? []
  const refuse = (say: string) => failure([{ code: 'log/moment', at: '', say }])
  if (!date || Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59 || !isDay(date))
    return refuse(
      `“${text}” is no moment; write date and time as the site’s clocks show them: 2026-07-06 07:13`,
    )
  const clock = Number(hour) * 3600 + Number(minute) * 60 + Number(second)
  const at = instantAt(date, clock, zone)
  const shown = localTime(at, zone)
  if (shown.date !== date || shown.clock !== clock)
    return refuse(
      `No clock showed ${text}: clocks were put forward that night. The next minute after it is ${clockText(at, zone)}.`,
    )
  return success(at)
}

function isDay(date: string): boolean {
  const day = new Date(`${date}T00:00:00Z`)
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(date)
}

/** The other way round, to the second. */
export function momentText(at: Instant, zone: string): string {
  const { date, clock } = localTime(at, zone)
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0')
  const seconds = Math.round(clock % 60) % 60
  return `${date} ${two(clock / 3600)}:${two((clock % 3600) / 60)}${seconds === 0 ? '' : `:${two(seconds)}`}`
}
