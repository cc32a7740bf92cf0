import { describe, expect, it } from 'vitest'
import { parseJob } from './index.js'

const job = (...more: readonly string[]): string =>
  [
    'dawnlift: 1',
    'name: Wall',
    'site: { name: yard, latitude: 41.2°, longitude: 3.4° W, timeZone: Europe/Madrid }',
    'calendar: { firstDay: 2026-05-04 }',
    'weather: { file: hours.epw }',
    'walls: [{ id: W1, makeUp: single, height: 1 m, path: [[0 m, 0 m], [6 m, 0 m]] }]',
    ...more,
  ].join('\n')
const problems = (...pins: readonly string[]) => {
  const read = parseJob(job('pins:', ...pins.map(pin => `  - { ${pin} }`)))
  return read.ok ? [] : read.problems
}

describe('pins of a job', () => {
  it('are days a section rests, and lifts promised to a day', () => {
    const read = parseJob(
      job(
        'pins:',
        '  - { section: A, notOn: [2026-05-12, 2026-05-13], why: the street is closed }',
        '  - { section: B, lift: 2, on: 2026-05-14 }',
        '  - { section: B, lift: 3, on: 2026-05-15, layers: 47 to 92 }',
        'aim: calmest',
      ),
    )
    expect(read.ok && read.value.job.aim).toBe('calmest')
    expect(read.ok && read.value.job.pins).toEqual([
      { kind: 'closed', section: 'A', dates: ['2026-05-12', '2026-05-13'], why: 'the street is closed' },
      { kind: 'lift', section: 'B', lift: 2, date: '2026-05-14' },
      { kind: 'lift', section: 'B', lift: 3, date: '2026-05-15', layers: { first: 47, last: 92 } },
    ])
  })
  it.each([
    ['too little', ['section: A'], 'job/pin', /notOn: \[2026-07-14\]/],
    ['two things at once', ['section: A, notOn: [2026-05-12], lift: 2'], 'job/pin', /make it two/],
    ['half a lift', ['section: A, lift: 1.5, on: 2026-05-12'], 'job/pin', /1\.5 is none/],
    [
      'no run of layers',
      ['section: A, lift: 1, on: 2026-05-12, layers: 9 to 3'],
      'job/pin-layers',
      /47 to 92/,
    ],
    ['a slip of a key', ['section: A, noton: [2026-05-12]'], 'job/unknown-key', /did you mean “notOn”/],
    ['a day of no calendar', ['section: A, notOn: [2026-02-30]'], 'job/date', /2026-02-30/],
    [
      'a lift on a day of rest',
      ['section: A, notOn: [2026-05-12]', 'section: A, lift: 1, on: 2026-05-12'],
      'job/pins-clash',
      /lets the section rest/,
    ],
    [
      'a lift on two days',
      ['section: A, lift: 1, on: 2026-05-12', 'section: A, lift: 1, on: 2026-05-13'],
      'job/pins-clash',
      /pinned twice, to 2026-05-12 and to 2026-05-13/,
    ],
    [
      'two lifts on one day',
      ['section: A, lift: 1, on: 2026-05-12', 'section: A, lift: 2, on: 2026-05-12'],
      'job/pins-clash',
      /one lift a day/,
    ],
    [
      'an upper lift before a lower one',
      ['section: A, lift: 2, on: 2026-05-12', 'section: A, lift: 1, on: 2026-05-13'],
      'job/pins-clash',
      /one after the other/,
    ],
  ])('that say %s are problems', (_, pins, code, say) => {
    const found = problems(...pins)
    expect(found.map(each => each.code)).toContain(code)
    expect(found.map(each => each.say).join()).toMatch(say)
  })
  it('of a section that was not divided by hand ask which was meant', () => {
    const sections = 'sections: [{ id: North, stretches: [{ wall: W1, from: 0 m, to: 6 m }] }]'
    const read = parseJob(job(sections, 'pins: [{ section: Nort, notOn: [2026-05-12] }]'))
    expect(read.ok ? '' : read.problems.map(each => each.say).join()).toMatch(/did you mean “North”/)
  })
})
