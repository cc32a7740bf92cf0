import { defaultTable } from '@dawnlift/document/job'
import { describe, expect, it } from 'vitest'
import { ruleNames, ruleOrigin, ruleText } from './rule-words.js'
import { columnsOf, weatherDropped } from './weather-drop.js'
import { placeOfProblem, whereToMend } from './where-to.js'

describe('the rules in words', () => {
  it('are all the rules a job may set', () =>
    expect(ruleNames.map(name => `rules.${name}`).sort()).toEqual(
      Object.keys(defaultTable)
        .filter(path => path.startsWith('rules.'))
        .sort(),
    ))
  // closed form: 35 °C · 1.8 + 32 = 95 °F; 32 km/h / 1.609344 = 19.9 mph; a metre is 3' 3 3/8" to the sixteenth.
  it.each([
    ['mixTemperatureMost', 35, '35 °C', '95 °F'],
    ['windMost', 32 / 3.6, '32 km/h', '19.9 mph'],
    ['liftHeight', 1, '1 m', `3' 3 3/8"`],
    ['overnightCure', 43200, '12 h', '12 h'],
    ['restMost', 1800, '30 min', '30 min'],
    ['standSafety', 1.5, '1.50', '1.50'],
    ['daylightNeeded', 0, 'no', 'no'],
  ] as const)('%s is said in both systems', (name, value, metric, imperial) => {
    expect(ruleText(name, value, 'metric')).toBe(metric)
    expect(ruleText(name, value, 'imperial')).toBe(imperial)
  })
  it('of the job still say what is usual', () => {
    expect(ruleOrigin('liftHeight', true)).toMatchObject({ source: 'the job' })
    expect(ruleOrigin('liftHeight', true).why).toContain('usual is 1 m')
    expect(ruleOrigin('wbgtMost', false).source).toBe('[ISO7243]')
  })
})

describe('where a finding is mended', () => {
  const job = {
    walls: [
      {
        id: 'S',
        centreline: {
          points: [
            [0, 0],
            [6, 0],
          ],
          bulges: [0],
          closed: false,
        },
      },
      {
        id: 'N',
        centreline: {
          points: [
            [0, 4],
            [6, 4],
          ],
          bulges: [0],
          closed: false,
        },
      },
    ],
    embeds: [{ id: 'E3' }],
    openings: [{ id: 'D1' }],
    columns: [{ id: 'K2' }],
  } as unknown as Parameters<typeof whereToMend>[1]
  const lifts = new Set(['B2'])
  it.each([
    ['E3 in S', 'reach', { place: 'walls', select: { kind: 'embed', id: 'E3' } }],
    ['S', 'thin-place', { place: 'walls', select: { kind: 'wall', id: 'S' } }],
    ['B2', 'heat', { place: 'days', select: { kind: 'lift', id: 'B2' } }],
    ['gantry-28', 'pump-pressure', { place: 'mix' }],
  ] as const)('%s leads to its place', (at, check, to) =>
    expect(whereToMend({ at, check }, job, lifts)).toEqual(to),
  )
  it('a column leads to itself', () =>
    expect(whereToMend({ at: 'K2', check: 'pour' }, job, lifts).select).toEqual({ kind: 'column', id: 'K2' }))
  it('a bead, which is no thing of the plan, leads to the wall at its place', () =>
    expect(whereToMend({ at: 'A.3.w1', check: 'overhang', point: [2, 3.8] }, job, lifts)).toEqual({
      place: 'walls',
      select: { kind: 'wall', id: 'N' },
    }))
  it.each([
    ['job.yaml:41:9 walls[3].thickness', 'walls'],
    ['job.yaml:3:1 rules.liftHeight', 'site'],
    ['mix-tests.csv:7', 'mix'],
    ['job.yaml:9:1 costs.currency', 'tally'],
  ])('a problem at %s belongs to %s', (at, place) => expect(placeOfProblem({ at })).toBe(place))
})

describe('a weather file dropped on the site', () => {
  const job = 'name: Shed\nweather:\n  source: old\n  normals: []\nrules: {} # ours\n'
  it('that is a table names its columns from its headings', () =>
    expect(columnsOf('Time,Temp (°C),RH (%),Wind speed (km/h),Gust (km/h),Rain (mm)')).toEqual({
      ok: true,
      value: {
        time: 'Time',
        air: 'Temp (°C) °C',
        humidity: 'RH (%) %',
        wind: 'Wind speed (km/h) km/h',
        gust: 'Gust (km/h) km/h',
        rain: 'Rain (mm) mm',
      },
    }))
  it('replaces the weather block and nothing else', () => {
    const dropped = weatherDropped(job, 'hours.csv', 'time,air_C,wind_m/s\n2026-07-06 00:00,20,2\n')
    expect(dropped.ok && dropped.value.document).toMatch(
      /weather:[\s\S]*file: hours\.csv[\s\S]*rules: \{\} # ours/,
    )
    expect(dropped.ok && dropped.value.document).not.toContain('old')
  })
  it('without a time or an air temperature is refused with what it must have', () => {
    const dropped = weatherDropped(job, 'notes.csv', 'who,what\nme,this\n')
    expect(dropped.ok ? '' : dropped.problems[0]?.say).toMatch(/who, what/)
  })
})
