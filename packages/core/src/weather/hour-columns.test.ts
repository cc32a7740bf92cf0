import { describe, expect, it } from 'vitest'
import { isBeyond } from '../limit/index.js'
import { dryInland, summerSite } from './fixtures/summer-site.js'
import { hourColumns, hoursFromNormals, printHourAt, printHours } from './index.js'

const year = hoursFromNormals(dryInland, summerSite.site, '2026-01-01', 365)
const windy = year.map((hour, index) => ({ ...hour, wind: index % 11, gust: (index * 7) % 19 }))
const permittedHours = { from: 7.5 * 3600, until: 16.75 * 3600, source: 'the permit' }
const daylit = {
  ...summerSite,
  site: { ...summerSite.site, permittedHours },
  rules: { ...summerSite.rules, daylightNeeded: { value: 1, source: 'the job' } },
}
const chiller = { temperature: 4, rate: 0.01 }
const chilled = { ...daylit, batching: { ...summerSite.batching, siloGain: 12, chiller } }
const everyRule = [
  'mix-hot',
  'mix-cold',
  'air-cold',
  'evaporation',
  'wind',
  'gust',
  'rain',
  'crew-heat',
  'daylight',
  'permitted-hours',
] as const

describe('hourColumns', () => {
  it.each([
    ['tap water, lights on site', summerSite],
    ['daylight and permitted hours', daylit],
    ['a chiller', chilled],
  ] as const)('agree with the hours as objects, hour by hour: %s', (_, conditions) => {
    const columns = hourColumns(conditions, windy)
    const hours = printHours(conditions, windy)
    const opens = hours.map(hour => (hour.limits.some(isBeyond) ? 0 : 1))
    expect([...columns.open]).toEqual(opens)
    expect(hours.map(hour => hour.mixTemperature)).toEqual([...columns.tap])
    expect(hours.map(hour => hour.wbgt)).toEqual([...columns.wbgt])
    expect(hours.map(hour => hour.evaporation)).toEqual([...columns.evaporation])
    for (let index = 0; index < hours.length; index += 37)
      expect(printHourAt(columns, index)).toEqual(hours[index])
  })
  it.each(everyRule)('close an hour for %s alone', kind => {
    // Rules that no hour passes, then one of them that every hour passes.
    const below = { value: -1e9, source: 'the job' }
    const above = { value: 1e9, source: 'the job' }
    const mild = {
      ...summerSite.rules,
      mixTemperatureMost: above,
      mixTemperatureLeast: below,
      airTemperatureLeast: below,
      evaporationMost: above,
      windMost: above,
      gustMost: above,
      rainMost: above,
      wbgtMost: above,
    }
    const first = windy.slice(0, 24)
    expect([...hourColumns({ ...summerSite, rules: mild }, first).open]).toEqual(first.map(() => 1))
    const strict = {
      'mix-hot': { mixTemperatureMost: below },
      'mix-cold': { mixTemperatureLeast: above },
      'air-cold': { airTemperatureLeast: above },
      evaporation: { evaporationMost: below },
      wind: { windMost: below },
      gust: { gustMost: below },
      rain: { rainMost: below },
      'crew-heat': { wbgtMost: below },
      daylight: { daylightNeeded: { value: 2, source: 'the job' } },
      'permitted-hours': {},
    }[kind]
    const noTime = { from: 86_399, until: 86_400, source: 'the permit' }
    const site = kind === 'permitted-hours' ? { ...summerSite.site, permittedHours: noTime } : summerSite.site
    const closed = hourColumns({ ...summerSite, site, rules: { ...mild, ...strict } }, first)
    expect([...closed.open]).toEqual(first.map(() => 0))
  })
  it('survive the way out of a worker', () => {
    const columns = hourColumns(chilled, windy.slice(0, 48))
    expect(structuredClone(columns)).toEqual(columns)
  })
})
