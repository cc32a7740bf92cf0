import { momentAt } from '@dawnlift/core/clock'
import type { Instant } from '@dawnlift/core/quantity'
import type { Ledger } from './ledger.js'

/** `2026-07-05 18:00` as the site's clocks show it; undefined, with the problem noted, where it is no such moment. */
export function buildMoment(
  text: string,
  zone: string,
  at: readonly (string | number)[],
  ledger: Ledger,
): Instant | undefined {
  const read = momentAt(text, zone)
  if (read.ok) return read.value
  for (const { code, say } of read.problems)
    ledger.wrong(code === 'clock/gap' ? 'job/clock-gap' : 'job/date', at, say)
  return undefined
}
