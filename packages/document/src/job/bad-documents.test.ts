import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { newJobText, parseJob } from './index.js'

const lines = {
  head: 'dawnlift: 1\nname: Wall',
  site: 'site: { name: yard, latitude: 41.2°, longitude: 3.4° W, timeZone: Europe/Madrid }',
  calendar: 'calendar: { firstDay: 2026-05-04 }',
  weather: 'weather: { file: hours.epw }',
  walls: 'walls: [{ id: W1, makeUp: single, height: 1 m, path: [[0 m, 0 m], [6 m, 0 m]] }]',
}
/** The smallest job that reads, with some of its lines replaced and others added. */
const job = (change: Partial<typeof lines> = {}, ...more: readonly string[]): string =>
  [...Object.values({ ...lines, ...change }), ...more].join('\n')

const problems = (text: string) => {
  const read = parseJob(text)
  return read.ok ? [] : read.problems
}
const codes = (text: string) => problems(text).map(each => each.code)

describe('bad documents', () => {
  const wallWith = (parts: string) => ({
    walls: `walls: [{ id: W1, path: [[0 m, 0 m], [6 m, 0 m]], ${parts} }]`,
  })
  it.each([
    ['nothing', '', 'job/not-a-job'],
    ['a list', '- 1\n- 2', 'job/not-a-job'],
    ['no version', job({ head: 'name: Wall' }), 'job/no-version'],
    ['a newer version', job({ head: 'dawnlift: 99\nname: Wall' }), 'job/newer-version'],
    ['a version in words', job({ head: 'dawnlift: one\nname: Wall' }), 'job/version'],
    ['broken YAML', job({}, 'rules: { liftHeight: 1 m'), 'job/yaml'],
    ['a key twice', job({}, 'name: Again'), 'job/yaml'],
    ['a bare number', job(wallWith('makeUp: single, height: 2.8')), 'quantity/no-unit'],
    ['a number as text without unit', job(wallWith('makeUp: single, height: "2.8"')), 'quantity/no-unit'],
    ['not a number', job(wallWith('makeUp: single, height: .nan')), 'quantity/no-unit'],
    ['an absurd length', job(wallWith('makeUp: single, height: 1e300 m')), 'job/out-of-range'],
    ['a missing height', job(wallWith('makeUp: single')), 'job/missing'],
    [
      'a thick single wall',
      job(wallWith('makeUp: single, height: 1 m, thickness: 200 mm')),
      'job/single-thickness',
    ],
    [
      'a double wall without cavity',
      job(wallWith('makeUp: double, height: 1 m, thickness: 120 mm')),
      'job/thin-wall',
    ],
    ['an unknown make-up', job(wallWith('makeUp: dubble, height: 1 m')), 'job/invalid-value'],
    ['an unknown type', job(wallWith('type: outer')), 'job/unknown-type'],
    ['a day that is none', job({ calendar: 'calendar: { firstDay: 2026-02-30 }' }), 'job/date'],
    [
      'a moment in the spring gap',
      job({ calendar: 'calendar: { firstDay: 2026-05-04, now: 2026-03-29 02:30 }' }),
      'job/clock-gap',
    ],
    ['an unknown time zone', job({ site: lines.site.replace('Madrid', 'Mordor') }), 'job/time-zone'],
    ['a latitude beyond the pole', job({ site: lines.site.replace('41.2°', '91°') }), 'job/geographic'],
    [
      'a file above the folder',
      job({ weather: 'weather: { file: ../../secret.epw }' }),
      'job/path-leaves-folder',
    ],
    ['an absolute file', job({ weather: 'weather: { file: /etc/hours.epw }' }), 'job/path-leaves-folder'],
    ['a file on a drive', job({ weather: "weather: { file: 'C:\\hours.epw' }" }), 'job/path-leaves-folder'],
    [
      'a file on the net',
      job({ weather: 'weather: { file: http://a/hours.epw }' }),
      'job/path-leaves-folder',
    ],
    ['two weathers', job({ weather: 'weather: {}' }), 'job/weather'],
    ['no wall', job({ walls: 'walls: []' }), 'job/no-walls'],
    ['a drawing nobody read', job({}, 'drawing: { file: plan.dxf, layers: {} }'), 'job/drawing-missing'],
    ['a day that ends before it starts', job({}, 'crew: { dayStart: 18:00, dayEnd: 6:00 }'), 'job/day'],
    [
      'an inspection in a wall that is not there',
      job({}, 'inspections: [{ id: I1, wall: W9, above: 500 mm, takes: 30 min, what: bars }]'),
      'job/unknown-wall',
    ],
    [
      'an inspection above the wall',
      job({}, 'inspections: [{ id: I1, wall: W1, above: 1 m, takes: 30 min, what: bars }]'),
      'job/inspection-outside',
    ],
    [
      'two inspections of one name',
      job(
        {},
        `inspections:${'\n  - { id: I1, wall: W1, above: 500 mm, takes: 30 min, what: bars }'.repeat(2)}`,
      ),
      'job/double',
    ],
    [
      'a load that comes at no moment',
      job({}, 'batching: { silo: { stock: 6 t, loads: [{ at: tomorrow, mass: 25 t }] } }'),
      'job/date',
    ],
    ['an unknown machine', job({}, 'machine: { profile: gantry-13 }'), 'job/unknown-profile'],
    ['a pump without range', job({}, 'machine: { pump: { flowLeast: 40 L/min } }'), 'job/pump-flow'],
    [
      'a pump that begins beyond its most',
      job({}, 'machine: { pump: { settingIdle: 90, settingAtMost: 80 } }'),
      'job/pump-setting',
    ],
    ['a control character', job({ head: 'dawnlift: 1\nname: "a\\u0007b"' }), 'job/control-character'],
    ['a prototype key', job({}, '__proto__: { x: 1 }'), 'job/unknown-key'],
  ])('%s is a problem', (_, text, code) => expect(codes(text)).toContain(code))

  it('are answered with every problem at once, each with line, column and path', () => {
    const found = problems(
      job(
        { walls: 'walls:\n  - id: W1\n    makeUp: single\n    heigt: 1 m\n    path: [[0 m, 0 m], [6, 0 m]]' },
        'rules: { liftHeight: 1 }',
      ),
    )
    expect(found.map(each => [each.code, each.at])).toEqual([
      ['quantity/no-unit', 'job.yaml:10:25 walls[0].path[1][0]'],
      ['job/unknown-key', 'job.yaml:9:5 walls[0].heigt'],
      ['quantity/no-unit', 'job.yaml:11:22 rules.liftHeight'],
    ])
  })
  it('get a hint at the key that was meant', () =>
    expect(problems(job({}, 'rules: { liftHight: 1 m }'))[0]?.say).toContain('did you mean “liftHeight”?'))
  it('of an imperial job are answered in its units, whatever was typed', () => {
    const thin = wallWith('makeUp: double, height: 1 m, thickness: 120 mm')
    const [problem] = problems(job(thin, 'units: imperial'))
    // Hand: 120 mm are 4.72 in, 4 3/4 to a sixteenth.
    expect(problem?.say).toContain('double wall of 4 3/4"')
    expect(problem?.say).not.toContain('mm')
    expect(problems(job(thin))[0]?.say).toContain('double wall of 120 mm')
  })
  it('get a hint at the unit that is missing', () =>
    expect(problems(job({}, 'rules: { liftHeight: 1 }'))[0]?.say).toBe(
      '“liftHeight”: the bare number 1 has no unit; write a value with its unit, like “2.46 m”',
    ))

  it('that unfold without end are refused', () => {
    const bomb = ['a: &a [x, x, x, x, x, x, x, x, x]']
    for (const [from, to] of ['ab', 'bc', 'cd', 'de', 'ef', 'fg'].map(pair => [...pair]))
      bomb.push(
        `${to}: &${to} [*${from}, *${from}, *${from}, *${from}, *${from}, *${from}, *${from}, *${from}]`,
      )
    expect(codes(job({}, ...bomb))).toEqual(['job/yaml-alias'])
  })
  it('of many megabytes are refused', () =>
    expect(codes(`${job()}\n#${'x'.repeat(5_000_000)}`)).toEqual(['job/too-large']))
  it('never make the reader throw', () => {
    const whole = newJobText('Shed')
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.nat(40), fc.string({ maxLength: 6 }), (at, cut, put) => {
        const read = parseJob(whole.slice(0, at) + put + whole.slice(at + cut))
        return read.ok || read.problems.every(each => each.say !== '' && each.at !== '')
      }),
      { numRuns: 40 },
    )
  })
})

describe('parts that do not fit', () => {
  const wall = lines.walls
    .replace('makeUp: single', 'makeUp: double, thickness: 250 mm')
    .replace('height: 1 m', 'height: 2.8 m')
  const opening = (parts: string) =>
    job({ walls: wall }, `openings: [{ id: D1, wall: W1, kind: door, ${parts} }]`)
  const embed = (parts: string) =>
    job(
      { walls: wall },
      `embeds: [{ id: E1, wall: W1, kind: box, trade: electrical, face: left, width: 70 mm, height: 70 mm, ${parts} }]`,
    )
  it.each([
    ['an opening past the end', opening('at: 5.8 m, width: 1 m, head: 2.1 m'), 'job/openings-outside'],
    ['an opening higher than its wall', opening('at: 3 m, width: 1 m, head: 3 m'), 'job/openings-outside'],
    [
      'a lintel higher than its wall',
      opening('at: 3 m, width: 1 m, head: 2.7 m, lintel: { height: 200 mm }'),
      'job/openings-outside',
    ],
    [
      'a head under its sill',
      opening('at: 3 m, width: 1 m, sill: 2.2 m, head: 2.1 m'),
      'job/openings-outside',
    ],
    ['an embed above its wall', embed('at: 1 m, bottom: 2.75 m, depth: 50 mm'), 'job/embeds-outside'],
    ['an embed deeper than its wall', embed('at: 1 m, bottom: 1 m, depth: 300 mm'), 'job/embeds-outside'],
    [
      'a column past the end',
      job({ walls: wall }, 'columns: [{ id: K1, wall: W1, at: 0 m, length: 300 mm, thickness: 250 mm }]'),
      'job/columns-outside',
    ],
    [
      'openings that overlap',
      job(
        { walls: wall },
        'openings: [{ id: A, wall: W1, kind: door, at: 2 m, width: 1 m, head: 2 m }, { id: B, wall: W1, kind: door, at: 2.5 m, width: 1 m, head: 2 m }]',
      ),
      'job/openings-overlap',
    ],
    [
      'an unknown wall',
      job({ walls: wall }, 'columns: [{ id: K1, wall: W2, at: 1 m, length: 300 mm, thickness: 250 mm }]'),
      'job/unknown-wall',
    ],
    [
      'an id used twice',
      job({ walls: wall }, 'columns: [{ id: W1, wall: W1, at: 1 m, length: 300 mm, thickness: 250 mm }]'),
      'job/double-id',
    ],
    [
      'a section past the end',
      job({ walls: wall }, 'sections: [{ id: A, stretches: [{ wall: W1, from: 0 m, to: 7 m }] }]'),
      'job/stretch',
    ],
    ['a joint past the end', job({ walls: wall }, 'joints: [{ wall: W1, at: 6.1 m }]'), 'job/joint-outside'],
    ['a joint in no wall', job({ walls: wall }, 'joints: [{ wall: W9, at: 1 m }]'), 'job/unknown-wall'],
    ['a forbidden cut nowhere', job({ walls: wall }, 'noCutAt: [X]'), 'job/unknown-id'],
  ])('%s is a problem', (_, text, code) => expect(codes(text)).toContain(code))
  it('an opening over another is none', () =>
    expect(
      codes(
        job(
          { walls: wall },
          'openings: [{ id: A, wall: W1, kind: window, at: 2 m, width: 1 m, sill: 200 mm, head: 1 m }, { id: B, wall: W1, kind: window, at: 2 m, width: 1 m, sill: 1.4 m, head: 2 m }]',
        ),
      ),
    ).toEqual([]))
})
