import { scheduleCampaign } from '@dawnlift/core/campaign'
import type { SiteEvent } from '@dawnlift/core/log'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inventedHouse } from '../../../core/src/campaign/invented-site.js'
import {
  addedLines,
  isLogLine,
  logRows,
  openStop,
  readLog,
  readTold,
  writeEvent,
  writeStrike,
  writeTold,
} from './index.js'

const zone = 'Europe/Madrid'
const line = (fields: object) => JSON.stringify(fields)
const layer = { at: '2026-07-06 07:13', what: 'layer', section: 'A', layer: 15 }
const says = (...lines: string[]) => {
  const read = readLog(lines.join('\n'), zone)
  return read.ok ? [] : read.problems.map(({ at, say }) => `${at} ${say}`)
}

const words = fc.string({ minLength: 1, maxLength: 40 }).map(text => `x${text}`.trim())
const at = fc.integer({ min: 1_700_000_000, max: 1_800_000_000 })
const events: fc.Arbitrary<SiteEvent> = fc.oneof(
  fc.record({ kind: fc.constant('shift' as const), at }),
  fc.record({
    kind: fc.constant('layer' as const),
    at,
    section: words,
    layer: fc.integer({ min: 1, max: 999 }),
  }),
  fc.record({
    kind: fc.constant('taken-down' as const),
    at,
    section: words,
    layer: fc.integer({ min: 0, max: 9 }),
  }),
  fc.record({ kind: fc.constant('stop' as const), at, until: at, cause: words }),
  fc.record({ kind: fc.constant('note' as const), at, text: words }),
)

describe('a site log', () => {
  it('comes back as it was written, in any zone without a change of clocks', () =>
    fc.assert(
      fc.property(
        fc.array(events, { maxLength: 8 }),
        fc.constantFrom('UTC', 'Asia/Kolkata', 'America/Phoenix'),
        (all, place) => {
          const read = readLog(all.map(event => `${writeEvent(event, place)}\n`).join(''), place)
          expect(read).toEqual({ ok: true, value: all })
        },
      ),
    ))
  it('takes the time as the site’s clocks show it', () => {
    // Hand: Madrid is two hours ahead of UTC in July.
    const read = readLog(line(layer), zone)
    expect(read.ok && read.value[0]?.at).toBe(Date.UTC(2026, 6, 6, 5, 13) / 1000)
  })
  it('leaves out a line that a later one strikes', () => {
    const read = readLog([line(layer), line({ ...layer, layer: 16 }), writeStrike(1)].join('\n'), zone)
    expect(read.ok && read.value.map(event => 'layer' in event && event.layer)).toEqual([16])
  })
  it('passes over empty lines but counts them', () =>
    expect(says('', line({ ...layer, layr: 1 }))[0]).toMatch(/^site-log.jsonl:2 The key “layr”.*“layer”/))
  it('tells every problem of every line at once', () =>
    expect(
      says('{', line({ what: 'shift' }), line({ ...layer, layer: 1.5 }), line({ what: 'pause' })),
    ).toHaveLength(4))
  it('says what a line cut short by a power cut needs', () =>
    expect(says(line(layer).slice(0, 30))[0]).toMatch(/cut short/))
  it('will not strike a line that is not there, or one still to come', () => {
    expect(says(writeStrike(7))[0]).toMatch(/no earlier event in line 7/)
    expect(says(writeStrike(2), line(layer))[0]).toMatch(/no earlier event in line 2/)
  })
})

describe('days that were told', () => {
  const campaign = scheduleCampaign(inventedHouse(), 'brisk')
  it('come back day by day and lift by lift', () => {
    const read = readTold(writeTold(campaign, 5))
    expect(read.ok && read.value.campaign.days).toEqual(campaign.days)
    expect(read.ok && read.value.at).toBe(5)
  })
  it.each([
    '',
    '{}',
    '[]',
    'null',
    '{"dawnliftTold":2,"at":1,"days":[]}',
    writeTold(campaign, 5).slice(0, 900),
  ])('are not %j', text => expect(readTold(text).ok).toBe(false))
})

describe('lines added to a log', () => {
  const [first, second] = [line(layer), line({ ...layer, layer: 16 })]
  it('end what was cut short, and are whole', () =>
    expect(addedLines('{"at":"2026', [first])).toBe(`\n${first}\n`))
  it('are not written twice when they are sent twice', () => {
    const known = addedLines('', [first, second])
    expect(addedLines(known, [first, second])).toBe('')
    expect(addedLines(`${first}\n`, [first, second])).toBe(`${second}\n`)
  })
  it('are written again when the same line was struck', () =>
    expect(addedLines(`${first}\n${writeStrike(1)}\n`, [first])).toBe(`${first}\n`))
  it('are lines of a log and nothing else', () =>
    expect([first, writeStrike(7), 'x', `${first}\n${second}`, '{"what":"layer"}'].map(isLogLine)).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]))
})

describe('the rows of a log', () => {
  const stop = { at: '2026-07-06 07:20', what: 'stop', cause: 'hose blocked' }
  const rows = (...lines: string[]) => logRows(lines.join('\n'), zone)
  it('keep their numbers past empty and broken lines, and say which are struck', () =>
    expect(
      rows('', line(layer), '{"at"', line({ ...layer, layer: 16 }), writeStrike(2)).map(row => [
        row.line,
        row.isStruck,
      ]),
    ).toEqual([
      [2, true],
      [4, false],
    ]))
  it('name the stop that lasts, until it is ended, struck, or a layer comes down after it', () => {
    expect(openStop(rows(line(layer), line(stop)))?.line).toBe(2)
    expect(openStop(rows(line(stop), writeStrike(1), line({ ...stop, until: '2026-07-06 07:40' })))).toBe(
      undefined,
    )
    expect(openStop(rows(line(stop), line({ ...layer, at: '2026-07-06 07:41' })))).toBe(undefined)
  })
})
