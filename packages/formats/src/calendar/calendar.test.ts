import { instantAt } from '@dawnlift/core/clock'
import { smallPlan } from '@dawnlift/drawing/examples'
import { convertIcsCalendar } from 'ts-ics'
import { describe, expect, it } from 'vitest'
import { calledTrades, callUid, writeCalendar } from './index.js'
import { vtimezone } from './vtimezone.js'

const plan = smallPlan()
const options = { sequence: 4, stamp: instantAt('2026-07-01', 43_200, 'UTC') }
const written = writeCalendar(plan.job, plan.calls, options)

/** ts-ics 2.4.6, another implementation, reads what we wrote. */
const read = (text: string) => convertIcsCalendar(undefined, text)

describe('writeCalendar', () => {
  it('gives every call at its own moment when read by another implementation', () => {
    const events = read(written).events ?? []
    const moments = events.map(event => [event.uid, event.start.date.getTime() / 1000])
    const key = `${plan.job.name}\n${plan.job.site.name}`
    expect(moments).toEqual(plan.calls.map(call => [callUid(key, call.id), Math.round(call.from)]))
  })

  it('carries the sequence and the stamp in UTC', () => {
    const event = read(written).events?.[0]
    expect(event?.sequence).toBe(4)
    expect(event?.stamp.date.toISOString()).toBe('2026-07-01T12:00:00.000Z')
    expect(written).toContain('DTSTAMP:20260701T120000Z')
  })

  it('writes local clock times of the site', () => {
    // The strap J1 is called at 06:20 in Madrid, 04:20 UTC.
    expect(written).toContain('DTSTART;TZID=Europe/Madrid:20260714T062000')
  })

  it('keeps every line within 75 octets', () => {
    const long = writeCalendar(
      { ...plan.job, site: { ...plan.job.site, name: 'מגרש הפרדס העליון '.repeat(12) } },
      plan.calls,
      options,
    )
    for (const line of long.split('\r\n'))
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
  })

  it('keeps the UID of a call whose time moved', () => {
    const later = plan.calls.map(call => ({ ...call, from: call.from + 3600, until: call.until + 3600 }))
    const uids = (text: string) => read(text).events?.map(event => event.uid)
    expect(uids(writeCalendar(plan.job, later, { ...options, sequence: 5 }))).toEqual(uids(written))
  })

  it('divides the calls among the trades without loss', () => {
    const counts = calledTrades(plan.calls).map(
      trade =>
        (writeCalendar(plan.job, plan.calls, { ...options, trade }).match(/BEGIN:VEVENT/g) ?? []).length,
    )
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(plan.calls.length)
    expect(counts.every(count => count > 0)).toBe(true)
  })

  it('tells two calls of one lintel apart, and two jobs', () => {
    expect(callUid('a', 'D1/cut')).not.toBe(callUid('a', 'D1/set'))
    expect(callUid('a', 'D1/cut')).not.toBe(callUid('b', 'D1/cut'))
    expect(callUid('a', 'D1.2f.')).not.toBe(callUid('a', 'D1/'))
  })
})

describe('vtimezone', () => {
  it.each([
    // published: EU summer time starts on the last Sunday of March, 01:00 UTC (Directive 2000/84/EC, art. 2; from memory)
    ['Europe/Madrid', '2026-07-01', 'DTSTART:20260329T020000\r\nTZOFFSETFROM:+0100\r\nTZOFFSETTO:+0200'],
    // published: US daylight time starts on the second Sunday of March, 02:00 (15 U.S.C. 260a; from memory)
    ['America/Denver', '2026-07-01', 'DTSTART:20260308T020000\r\nTZOFFSETFROM:-0700\r\nTZOFFSETTO:-0600'],
  ])('%s around %s changes its clocks on the lawful day', (zone, date, part) => {
    const at = instantAt(date, 0, zone)
    expect(vtimezone(zone, at, at)).toContain(part)
  })

  it('of a zone that never changes is one part', () => {
    const at = instantAt('2026-07-01', 0, 'Asia/Kolkata')
    expect(vtimezone('Asia/Kolkata', at, at).match(/TZOFFSETTO:\+0530/g)).toHaveLength(1)
  })
})
