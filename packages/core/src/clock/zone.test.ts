import { describe, expect, it } from 'vitest'
import { clockText, instantAt, zoneOffset } from './index.js'

const at = (iso: string) => Date.parse(iso) / 1000

describe('zoneOffset', () => {
  // Published: IANA time zone database, as the runtime carries it. Casey went from +8 to +11 h a minute past the hour.
  it.each([
    ['2020-10-03T16:00:59Z', 'Antarctica/Casey', 8],
    ['2020-10-03T16:01:00Z', 'Antarctica/Casey', 11],
    ['2026-03-29T00:59:59Z', 'Europe/Madrid', 1],
    ['2026-03-29T01:00:00Z', 'Europe/Madrid', 2],
    ['1900-06-01T12:00:00Z', 'Europe/Madrid', -884 / 3600],
  ])('at %s in %s is %d h', (iso, zone, hours) => {
    expect(zoneOffset(at(iso), zone)).toBeCloseTo(hours * 3600, 6)
    // The second time it comes from what was asked before.
    expect(zoneOffset(at(iso), zone)).toBeCloseTo(hours * 3600, 6)
  })
  it('is the same within a minute, whatever was asked first', () =>
    expect(
      [59.9, 0.2, 31].map(second => zoneOffset(at('2026-07-01T10:30:00Z') + second, 'Asia/Kolkata')),
    ).toEqual([19800, 19800, 19800]))
})

describe('instantAt', () => {
  it('is the clock’s own moment on both sides of the summer', () => {
    for (const date of ['2026-01-15', '2026-07-15'])
      expect(clockText(instantAt(date, 5 * 3600 + 2400, 'Europe/Madrid'), 'Europe/Madrid')).toBe('05:40')
  })
})
