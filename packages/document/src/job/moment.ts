import { instantAt, localTime } from '@dawnlift/core/clock'
import type { Instant } from '@dawnlift/core/quantity'
import { isDate } from './field.js'
import type { Ledger } from './ledger.js'

/** `2026-07-05 18:00` as the site's clocks show it; undefined, with the problem noted, where it is no such moment. */
export function buildMoment(
  text: string,
  zone: string,
  at: readonly (string | number)[],
  ledger: Ledger,
): Instant | undefined {
  const found = /^(\d{4}-\d{2}-\d{2})[ T](\d{1,2}):(\d{2})$/.exec(text)
  const clock = Number(found?.[2]) * 3600 + Number(found?.[3]) * 60
  const date = found?.[1] ?? ''
  if (!found || !isDate(date) || Number(found[2]) > 23 || Number(found[3]) > 59)
    return ledger.wrong('job/date', at, `“${text}” is not a moment; write it like “2026-07-05 18:00”.`)
  const instant = instantAt(date, clock, zone)
  const back = localTime(instant, zone)
  if (back.date !== date || back.clock !== clock)
    return ledger.wrong(
      'job/clock-gap',
      at,
      `No clock in ${zone} shows ${text}: it falls into the hour that is skipped in spring. Write a time outside it.`,
    )
  return instant
}
