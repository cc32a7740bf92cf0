import { describe, expect, it } from 'vitest'
import { isDate, momentAt, momentText } from './index.js'

const zone = 'Europe/Madrid'

describe('a moment', () => {
  it.each(['2026-02-30 07:00', '2026-07-06', '2026-07-06 24:00', '06/07/2026 07:00', '1e300'])(
    'is not %s',
    text => expect(momentAt(text, zone).ok).toBe(false),
  )
  it('is none in the hour that clocks leap over', () => {
    // Published: EU Directive 2000/84/EC, last Sunday of March at 01:00 UTC, from memory; 2026-03-29 in Madrid.
    const read = momentAt('2026-03-29 02:30', zone)
    expect(!read.ok && read.problems[0]?.say).toMatch(/put forward that night.*03:30/)
  })
  it('is the first of two when clocks are put back', () => {
    const read = momentAt('2026-10-25 02:30', zone)
    expect(read).toEqual({ ok: true, value: Date.UTC(2026, 9, 25, 0, 30) / 1000 })
  })
  it('is told to the second where there is one', () =>
    expect(momentText(Date.UTC(2026, 6, 6, 5, 13, 7) / 1000, zone)).toBe('2026-07-06 07:13:07'))
})

describe('a day of the calendar', () => {
  it('is 29 February in a leap year only', () =>
    // Published: Gregorian rule, ISO 8601; 2024 leaps, 2026 and 2100 do not.
    expect(['2024-02-29', '2026-02-29', '2100-02-29'].map(isDate)).toEqual([true, false, false]))
  it.each(['2026-13-01', '2026-7-6', '2026-07-06 ', ''])('is not “%s”', text =>
    expect(isDate(text)).toBe(false),
  )
})
