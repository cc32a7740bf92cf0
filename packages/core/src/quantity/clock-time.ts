import type { Result } from '../result/index.js'
import { failure, success } from '../result/index.js'
import type { Seconds } from './unit-aliases.js'

/** Reads a time of day, `5:00`, `05:30`, `17:45:10`, `5:30 am` or `24:00`, into seconds after midnight. */
export function parseClock(text: string): Result<Seconds> {
  const found = /^(\d{1,2}):(\d{2})(?::(\d{2}))?\s*([ap]\.?m\.?)?$/i.exec(text.trim())
  const half = found?.[4]?.replace(/\./g, '').toLowerCase()
  const hours = Number(found?.[1])
  const minutes = Number(found?.[2])
  const seconds = Number(found?.[3] ?? 0)
  const twelveHour = half === undefined || (hours >= 1 && hours <= 12)
  const clock = (half ? (hours % 12) + (half === 'pm' ? 12 : 0) : hours) * 3600 + minutes * 60 + seconds
  if (!found || minutes > 59 || seconds > 59 || clock > 86400 || !twelveHour)
    return failure([
      {
        code: 'quantity/not-a-clock',
        at: '',
        say: `“${text}” is not a time of day; write it like “5:00” or “17:30”`,
      },
    ])
  return success(clock)
}

/** `05:40`, to the nearest minute; the end of the day is `24:00`. */
export function formatClock(clock: Seconds): string {
  const minutes = Math.round(clock / 60)
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`
}
