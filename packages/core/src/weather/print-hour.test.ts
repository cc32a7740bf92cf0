import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { instantAt } from '../clock/index.js'
import { isBeyond, marginOf } from '../limit/index.js'
import { dryInland, summerSite } from './fixtures/summer-site.js'
import { closedBy, daylight, hoursFromNormals, openSpans, printHours, type WeatherHour } from './index.js'

const mild: WeatherHour = {
  start: instantAt('2026-05-12', 9 * 3600, 'Europe/Madrid'),
  air: 18,
  humidity: 0.6,
  wind: 2,
  gust: 4,
  rain: 0,
  global: 500,
  beam: 500,
  diffuse: 150,
  pressure: 94000,
  source: 'measured',
}
const only = (hour: Partial<WeatherHour>) => printHours(summerSite, [{ ...mild, ...hour }])[0]!
const kinds = (hour: Partial<WeatherHour>) => closedBy(only(hour)).map(limit => limit.kind)

describe('printHours', () => {
  it('opens a mild hour and shows every limit with room left', () => {
    const hour = only({})
    expect(hour.open).toBe(true)
    expect(hour.limits.map(limit => limit.kind)).toEqual([
      'mix-hot',
      'mix-cold',
      'air-cold',
      'evaporation',
      'wind',
      'gust',
      'rain',
      'crew-heat',
      'daylight',
    ])
    for (const limit of hour.limits) expect(marginOf(limit)).toBeGreaterThanOrEqual(0)
  })
  it.each([
    ['wind', { wind: 9.5, humidity: 1, air: 26 }],
    ['gust', { gust: 15 }],
    ['rain', { rain: 1 }],
    ['air-cold', { air: 4 }],
  ] as const)('closes for %s alone', (kind, change) => expect(kinds(change)).toEqual([kind]))
  it('closes a frosty hour for its mix too', () =>
    expect(kinds({ air: -8, global: 0, beam: 0, diffuse: 0 })).toContain('mix-cold'))
  it('closes a dry, hot, windy hour for mix, drying and crew', () =>
    expect(kinds({ air: 39, humidity: 0.35, global: 950, beam: 850, diffuse: 120 })).toEqual([
      'mix-hot',
      'evaporation',
      'crew-heat',
    ]))
  it('takes every limit’s source from the rule', () => {
    const rules = { ...summerSite.rules, windMost: { value: 3, source: 'X1999' } }
    const hour = printHours({ ...summerSite, rules }, [mild])[0]!
    expect(hour.limits.find(limit => limit.kind === 'wind')).toMatchObject({
      capacity: 3,
      source: 'X1999',
      unit: 'm/s',
    })
  })
  it('is open exactly when no limit is broken', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 48, noNaN: true }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (air, humidity, wind) => {
          const hour = only({ air, humidity, wind, gust: wind * 1.5 })
          expect(hour.open).toBe(!hour.limits.some(isBeyond))
        },
      ),
    ))

  it('says at which water the mix would just meet its limit', () => {
    const hour = only({ air: 38 })
    const cooled = printHours(
      { ...summerSite, batching: { ...summerSite.batching, waterTemperature: hour.waterNeeded! } },
      [{ ...mild, air: 38 }],
    )[0]!
    expect(cooled.mixTemperature).toBeCloseTo(summerSite.rules.mixTemperatureMost.value, 9)
  })
  it('shows the chilled mix beside the tap’s, dries less for it, and never cools below the least', () => {
    const chiller = { temperature: 4, rate: 1 }
    const chilled = (air: number) =>
      printHours({ ...summerSite, batching: { ...summerSite.batching, chiller } }, [{ ...mild, air }])[0]!
    expect(chilled(38).mixTemperatureChilled!).toBeLessThan(chilled(38).mixTemperature - 3)
    expect(chilled(38).evaporation).toBeLessThan(only({ air: 38 }).evaporation)
    expect(chilled(1).mixTemperatureChilled!).toBeGreaterThanOrEqual(Math.min(10, chilled(1).mixTemperature))
    expect(only({ air: 38 })).not.toHaveProperty('mixTemperatureChilled')
  })
  it('lets the dry material follow the mean of the last day', () => {
    const day = Array.from({ length: 48 }, (_, index) => ({
      ...mild,
      start: mild.start + index * 3600,
      air: index < 24 ? 10 : 20,
    }))
    const hours = printHours(summerSite, day)
    // hand: at the 12th hour of the second day the day's mean is (11·10 + 13·20)/24 = 15.417; 24 h on it is 20. Dry share 0.22/0.38.
    const wet = { ...day[47]!, air: 20 }
    const alone = printHours(summerSite, [wet])[0]!.mixTemperature
    expect(hours[47]!.mixTemperature).toBeCloseTo(alone, 9)
    const kept = (alone - hours[36]!.mixTemperature) / (20 - 15.4166667)
    expect(kept).toBeGreaterThan(0.45)
    expect(kept).toBeLessThan(0.22 / 0.38)
  })
  it('asks for daylight only where the job does', () => {
    const night = {
      start: instantAt('2026-05-12', 2 * 3600, 'Europe/Madrid'),
      global: 0,
      beam: 0,
      diffuse: 0,
    }
    expect(kinds(night)).toEqual([])
    const lit = {
      ...summerSite,
      rules: { ...summerSite.rules, daylightNeeded: { value: 1, source: 'the job' } },
    }
    expect(closedBy(printHours(lit, [{ ...mild, ...night }])[0]!).map(limit => limit.kind)).toEqual([
      'daylight',
    ])
  })
  it('has its light from civil dawn on', () => {
    const lit = {
      ...summerSite,
      rules: { ...summerSite.rules, daylightNeeded: { value: 1, source: 'the job' } },
    }
    const hours = printHours(lit, hoursFromNormals(dryInland, summerSite.site, '2026-09-10', 1))
    const dawn = daylight(summerSite.site, '2026-09-10', -6)
    for (const hour of hours) {
      const light = hour.limits.find(limit => limit.kind === 'daylight')!
      const middle = hour.start + 1800
      // A minute for the two ways of finding the sun.
      if (Math.abs(middle - dawn.rise!) > 60 && Math.abs(middle - dawn.set!) > 60)
        expect(isBeyond(light)).toBe(middle < dawn.rise! || middle > dawn.set!)
    }
  })

  it('keeps to the permitted hours of the site, to the minute', () => {
    const zone = summerSite.site.timeZone
    const permittedHours = { from: 7.5 * 3600, until: 16.75 * 3600, source: 'the permit' }
    const mildDay = Array.from({ length: 24 }, (_, hour) => ({
      ...mild,
      global: 0,
      beam: 0,
      diffuse: 0,
      start: instantAt('2026-05-12', hour * 3600, zone),
    }))
    const hours = printHours({ ...summerSite, site: { ...summerSite.site, permittedHours } }, mildDay)
    // Only hours permitted whole are open: 8 to 15; the stretch runs from 7:30 to 16:45.
    expect(hours.flatMap((hour, clock) => (hour.open ? [clock] : []))).toEqual([8, 9, 10, 11, 12, 13, 14, 15])
    const [span] = openSpans(hours)
    expect(span).toMatchObject({
      from: instantAt('2026-05-12', permittedHours.from, zone),
      until: instantAt('2026-05-12', permittedHours.until, zone),
      endedBy: { kind: 'permitted-hours', source: 'the permit' },
    })
  })
  describe('permitted hours', () => {
    const permitted = { from: 6.5 * 3600, until: 20 * 3600, source: 'the job' }
    const minutes = (zone: string, date: string, clock: number, window = permitted) => {
      const conditions = { ...summerSite, site: { ...summerSite.site, timeZone: zone } }
      const hour = printHours(
        conditions,
        [{ ...mild, start: instantAt(date, clock * 3600, zone) }],
        window,
      )[0]!
      return hour.limits.find(limit => limit.kind === 'permitted-hours')!.capacity
    }
    it('count the minutes of an hour that lie inside', () => {
      expect(minutes('Europe/Madrid', '2026-05-12', 5)).toBe(0)
      expect(minutes('Europe/Madrid', '2026-05-12', 6)).toBe(30)
      expect(minutes('Europe/Madrid', '2026-05-12', 12)).toBe(60)
      expect(minutes('Europe/Madrid', '2026-05-12', 20)).toBe(0)
    })
    it('follow the local clock through summer time and half-hour zones', () => {
      expect(minutes('Europe/Madrid', '2026-01-12', 6)).toBe(30)
      expect(minutes('Asia/Kolkata', '2026-05-12', 6)).toBe(30)
      expect(minutes('Australia/Lord_Howe', '2026-01-12', 6)).toBe(30)
    })
    it('run over midnight', () => {
      const night = { from: 22 * 3600, until: 6 * 3600, source: 'the job' }
      expect(minutes('Europe/Madrid', '2026-05-12', 23, night)).toBe(60)
      expect(minutes('Europe/Madrid', '2026-05-12', 3, night)).toBe(60)
      expect(minutes('Europe/Madrid', '2026-05-12', 12, night)).toBe(0)
    })
    it('close the hour when none is inside', () => {
      const hour = printHours(
        summerSite,
        [{ ...mild, start: instantAt('2026-05-12', 3 * 3600, 'Europe/Madrid') }],
        permitted,
      )[0]!
      expect(hour.open).toBe(false)
      expect(closedBy(hour).map(limit => limit.kind)).toEqual(['permitted-hours'])
    })
  })
  it('calls a figure that is no number a bug', () =>
    expect(() => only({ humidity: Number.NaN })).toThrow('every figure of an hour'))
  it('answers nothing for no hours', () => expect(printHours(summerSite, [])).toEqual([]))
})
