import { readFileSync } from 'node:fs'
import { pathLength } from '@dawnlift/core/geometry'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assumedTable, newJobText, type ParsedJob, parseJob } from './index.js'

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

const good = (text: string): ParsedJob => {
  const read = parseJob(text)
  if (!read.ok) throw new Error(read.problems.map(each => `${each.at}: ${each.say}`).join('\n'))
  return read.value
}
const problems = (text: string) => {
  const read = parseJob(text)
  return read.ok ? [] : read.problems
}
const codes = (text: string) => problems(text).map(each => each.code)

describe('a job', () => {
  it('of `dawnlift new` reads as it stands, whatever its name', () =>
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 60, unit: 'grapheme' }), name => {
        fc.pre(name.trim() !== '' && !/\p{Cc}/u.test(name))
        return good(newJobText(name)).job.name === name
      }),
      { numRuns: 25 },
    ))
  it('keeps names in any script and direction', () => {
    const { job: read } = good(job({ head: 'dawnlift: 1\nname: بيت الريح — 家' }))
    expect(read.name).toBe('بيت الريح — 家')
  })
  it('is in SI whatever its units are', () => {
    const text = job(
      {
        walls:
          'walls: [{ id: W1, makeUp: double, thickness: 10 in, height: 8\' 1", path: [[0 ft, 0 ft], [20 ft, 0 ft]] }]',
      },
      'units: imperial',
      'rules: { windMost: 20 mph, mixTemperatureMost: 90 °F }',
    )
    const { job: read } = good(text)
    expect(read.walls[0]).toMatchObject({ thickness: 0.254, top: 97 * 0.0254 })
    expect(read.rules.windMost).toEqual({ value: 8.9408, source: 'the job' })
    expect(read.rules.mixTemperatureMost.value).toBeCloseTo(32.2222, 4)
  })
  it('knows a pump that begins to deliver at a setting of its own', () => {
    const { pump } = good(
      job({}, 'machine: { pump: { flowMost: 20 L/min, settingAtMost: 215, settingIdle: 15 } }'),
    ).job.machine
    // hand: 200 for 20 L/min beyond S 15
    expect(pump.settingPerFlow / 60_000).toBeCloseTo(10, 9)
    expect(pump.settingIdle).toBe(15)
  })
  it('says that a bound itself is not allowed where it is not', () => {
    const said = (stiffness: string) =>
      problems(job({}, `mix: { stiffness: { start: ${stiffness}, rate: 0 Pa/s } }`))
    expect(said('0 Pa')[0]!.say).toContain(
      '0 Pa is out of range; allowed is more than 0, up to 1000000000 Pa',
    )
    expect(said('1 Pa')).toEqual([])
  })
  it('takes the head of a niche from its type, or from itself', () => {
    const niches = `embedTypes: { shelf: { kind: niche, trade: crew, face: left, bottom: 200 mm, width: 200 mm, height: 400 mm, depth: 50 mm, head: corbelled } }
embeds: [{ id: N1, wall: W1, type: shelf, at: 1 m }, { id: N2, wall: W1, type: shelf, at: 2 m, head: flat }]`
    expect(good(job({}, niches)).job.embeds.map(({ head }) => head)).toEqual(['corbelled', undefined])
    expect(codes(job({}, niches.replace('head: flat', 'head: arched')))).toHaveLength(1)
  })
  it('west and south are negative', () => expect(good(job()).job.site.longitude).toBe(-3.4))
  it('carries the weather it names, and where the drawing and the tests are', () => {
    expect(good(job()).weather).toEqual({
      kind: 'file',
      file: 'hours.epw',
      format: 'epw',
      columns: {},
      source: 'hours.epw',
    })
    expect(good(job({}, 'mix: { tests: tests.csv, density: 2200 kg/m³ }'))).toMatchObject({
      testsFile: 'tests.csv',
      job: { mix: { density: 2200 } },
    })
  })
  it('survives structuredClone and JSON unchanged', () => {
    const parsed = good(newJobText('Shed'))
    expect(structuredClone(parsed)).toEqual(parsed)
    expect(JSON.parse(JSON.stringify(parsed))).toEqual(parsed)
  })
})

describe('what a job assumes', () => {
  it('is listed with path, value and source, and only what it does not say', () => {
    const said = good(job({}, 'rules: { liftHeight: 1.1 m }')).assumed.map(each => each.at)
    expect(said).toContain('rules.overnightCure')
    expect(said).not.toContain('rules.liftHeight')
    expect(good(job()).assumed.find(each => each.at === 'rules.mixTemperatureMost')).toMatchObject({
      value: '35 °C',
      source: '[ACI305.1]',
    })
  })
  it('is shown in the units of the job', () => {
    const { assumed } = good(job({}, 'units: imperial'))
    expect(assumed.find(each => each.at === 'rules.mixTemperatureMost')?.value).toBe('95 °F')
  })
  it('gives each rule its source, the job’s own rules the job', () => {
    const { rules } = good(job({}, 'rules: { liftHeight: 1.1 m }')).job
    expect([rules.liftHeight.source, rules.overnightCure.source]).toEqual([
      'the job',
      'common practice, no source',
    ])
  })
  it('names no source that the references lack', () => {
    const references = readFileSync(
      new URL('../../../../docs/references/document.md', import.meta.url),
      'utf8',
    )
    const keys = assumedTable('metric').flatMap(row => row.source.match(/\[[^\]]+\]/g) ?? [])
    expect([...new Set(keys)].filter(key => !references.includes(key))).toEqual([])
  })
  it('counts the pump, reach and speeds of a profile', () => {
    const said = good(job({}, 'machine: { profile: gantry-28, printSpeedMost: 180 mm/s }'))
    expect(said.job.machine.printSpeedMost).toBe(0.18)
    expect(said.assumed.map(each => each.at)).toContain('machine.reach.x')
    expect(said.assumed.map(each => each.at)).not.toContain('machine.printSpeedMost')
  })
  it('names the mix as long as no test of the site is in', () =>
    expect(good(job()).assumed.filter(each => each.at.startsWith('mix.')).length).toBeGreaterThan(5))
})

describe('walls written in the job', () => {
  const wall = (path: string) =>
    good(job({ walls: `walls: [{ id: W1, makeUp: single, height: 1 m, path: ${path} }]` })).job.walls[0]!
      .centreline
  it('close when they end where they start', () =>
    expect(wall('[[0 m, 0 m], [3 m, 0 m], [3 m, 2 m], [0 m, 0 m]]')).toMatchObject({
      closed: true,
      points: [
        [0, 0],
        [3, 0],
        [3, 2],
      ],
    }))
  // closed form: a half circle of radius 2 m, in three notations; length 2π m.
  it.each(['bulge: 1', 'through: [2 m, -2 m]', 'radius: 2 m, turn: left'])('take an arc by %s', way =>
    expect(pathLength(wall(`[[0 m, 0 m], { to: [4 m, 0 m], ${way} }]`))).toBeCloseTo(2 * Math.PI, 9),
  )
  it.each([
    ['[{ to: [4 m, 0 m], bulge: 1 }, [0 m, 0 m]]', 'job/path-start'],
    ['[[0 m, 0 m], { to: [4 m, 0 m] }]', 'job/arc'],
    ['[[0 m, 0 m], { to: [4 m, 0 m], bulge: 1, radius: 3 m }]', 'job/arc'],
    ['[[0 m, 0 m], { to: [4 m, 0 m], radius: 1 m, turn: left }]', 'job/arc'],
    ['[[0 m, 0 m], [0 m, 0 m], [1 m, 0 m]]', 'job/zero-length'],
    ['[[0 m, 0 m]]', 'job/too-small'],
  ])('refuse %s: %s', (path, code) =>
    expect(
      codes(job({ walls: `walls: [{ id: W1, makeUp: single, height: 1 m, path: ${path} }]` })),
    ).toContain(code),
  )
})
