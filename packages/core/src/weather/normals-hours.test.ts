import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { describe, expect, it } from 'vitest'
import { addDays, localTime } from '../clock/index.js'
import { dryInland, summerSite } from './fixtures/summer-site.js'
import {
  airByDay,
  airByNight,
  type ClimateNormals,
  checkNormals,
  checkWeather,
  daylight,
  hoursFromNormals,
  humidityFromDewPoint,
  replayNormals,
  sourceSpans,
  type WeatherHour,
} from './index.js'

const { site } = summerSite
const year = hoursFromNormals(dryInland, site, '2026-01-01', 365)
const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length
/** Hours by their local date. */
function byDay(hours: readonly WeatherHour[], zone = site.timeZone): Map<string, WeatherHour[]> {
  const days = new Map<string, WeatherHour[]>()
  for (const hour of hours) {
    const { date } = localTime(hour.start, zone)
    days.set(date, [...(days.get(date) ?? []), hour])
  }
  return days
}
const yearDays = byDay(year)
const monthOf = (month: number) =>
  [...yearDays].filter(([date]) => Number(date.slice(5, 7)) === month).map(([, hours]) => hours)

/** Numbers in [0, 1) from a seed. */
function chance(seed: number): () => number {
  const generator = xoroshiro128plus(seed)
  return () => (generator.next() >>> 0) / 2 ** 32
}

describe('hoursFromNormals', () => {
  it('gives every hour of the days once, summer time and all', () => {
    // hand: 31 March days hold one hour less in Madrid (29 March 2026), October one more.
    expect(hoursFromNormals(dryInland, site, '2026-03-01', 31)).toHaveLength(31 * 24 - 1)
    expect(hoursFromNormals(dryInland, site, '2026-10-01', 31)).toHaveLength(31 * 24 + 1)
    expect(sourceSpans(year)).toEqual([
      { source: 'normals', from: year[0]!.start, until: year[0]!.start + 365 * 86400 },
    ])
  })
  it('keeps each month’s mean of daily highs and lows', () => {
    for (let month = 1; month <= 12; month += 1) {
      const days = monthOf(month)
      const high = mean(days.map(hours => Math.max(...hours.map(hour => hour.air))))
      const low = mean(days.map(hours => Math.min(...hours.map(hour => hour.air))))
      // An hourly mean misses the instant's extreme by up to a fortieth of the range; 0.1 K for the day's drift.
      const range = dryInland.months[month - 1]!.airMost - dryInland.months[month - 1]!.airLeast
      expect(Math.abs(high - dryInland.months[month - 1]!.airMost)).toBeLessThan(range / 40 + 0.1)
      expect(Math.abs(low - dryInland.months[month - 1]!.airLeast)).toBeLessThan(range / 40 + 0.1)
    }
  })
  it('keeps each month’s radiation where the sky can give it', () => {
    for (let month = 1; month <= 12; month += 1) {
      const megajoules =
        mean(monthOf(month).map(hours => hours.reduce((sum, hour) => sum + hour.global * 3600, 0))) / 1e6
      const sky = dryInland.months[month - 1]!.sky
      // Days within a month differ in how much of them the clear sky’s cap takes: 2 %.
      if (sky.kind === 'global') expect(Math.abs(megajoules / sky.megajoulesPerDay - 1)).toBeLessThan(0.02)
    }
  })
  it('keeps the mean wind and blows hardest in the early afternoon', () => {
    const july = monthOf(7).flat()
    expect(mean(july.map(hour => hour.wind))).toBeCloseTo(2.6, 1)
    const windiest = monthOf(7)[10]!.reduce((a, b) => (b.wind > a.wind ? b : a))
    expect(new Date(windiest.start * 1000).getUTCHours()).toBe(14)
  })
  it('rains on as many days as expected, and as much', () => {
    const wet = [...yearDays.values()].filter(hours => hours.some(hour => hour.rain > 0)).length
    // hand: the months' rain days sum to 62.5, rain to 386 mm. One day of rounding; wet days carry their own month's amount.
    expect(Math.abs(wet - 62.5)).toBeLessThanOrEqual(1.5)
    const millimetres = year.reduce((sum, hour) => sum + hour.rain, 0)
    expect(Math.abs(millimetres / 386 - 1)).toBeLessThan(0.05)
  })
  it('wets the same dates whatever day planning begins', () => {
    const later = hoursFromNormals(dryInland, site, '2026-05-15', 30)
    const wet = later.filter(hour => hour.rain > 0)
    expect(wet.length).toBeGreaterThan(0)
    expect(wet).toEqual(
      year.filter(
        hour => hour.rain > 0 && hour.start >= later[0]!.start && hour.start <= later.at(-1)!.start,
      ),
    )
  })
  it('has nothing to complain of', () => expect(checkWeather(year, site)).toEqual([]))
  it('is coolest near sunrise and has no sun before it', () => {
    const hours = yearDays.get('2026-07-14')!
    const { rise, set } = daylight(site, '2026-07-14')
    const coolest = hours.reduce((a, b) => (b.air < a.air ? b : a))
    expect(Math.abs(coolest.start + 1800 - rise!)).toBeLessThan(3600)
    for (const hour of hours)
      if (hour.start + 3600 < rise! - 600 || hour.start > set! + 600) expect(hour.global).toBe(0)
  })
  it('keeps the dew point through a dry day', () => {
    for (const hour of yearDays.get('2026-07-14')!)
      expect(hour.humidity).toBeCloseTo(humidityFromDewPoint(hour.air, 9.0), 1)
  })

  it.each([
    [
      'a polar day',
      { latitude: 78.2, longitude: 15.6, elevation: 5, timeZone: 'Arctic/Longyearbyen' },
      '2026-06-15',
    ],
    [
      'a polar night',
      { latitude: 78.2, longitude: 15.6, elevation: 5, timeZone: 'Arctic/Longyearbyen' },
      '2026-12-15',
    ],
    [
      'a site below the sea',
      { latitude: 31.5, longitude: 35.5, elevation: -420, timeZone: 'Asia/Jerusalem' },
      '2026-07-01',
    ],
    [
      'a half-hour zone',
      { latitude: 28.6, longitude: 77.2, elevation: 216, timeZone: 'Asia/Kolkata' },
      '2026-07-01',
    ],
    [
      'a leap day',
      { latitude: -33.9, longitude: 18.4, elevation: 10, timeZone: 'Africa/Johannesburg' },
      '2028-02-28',
    ],
    [
      'the far side of the date line',
      { latitude: -13.8, longitude: -171.8, elevation: 2, timeZone: 'Pacific/Apia' },
      '2026-01-01',
    ],
  ])('holds at %s', (_, place, date) => {
    const hours = hoursFromNormals(dryInland, place, date, 3)
    expect(hours).toHaveLength(72)
    expect(localTime(hours[0]!.start, place.timeZone)).toEqual({ date, clock: 0 })
    for (const hour of hours)
      for (const value of Object.values(hour))
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true)
    expect(checkWeather(hours, place)).toEqual([])
    if (place.elevation < 0) expect(hours[0]!.pressure).toBeGreaterThan(101325)
  })
  it('reads cloud cover where there is no radiation', () => {
    const withCover = (cover: number): ClimateNormals => ({
      ...dryInland,
      months: dryInland.months.map(month => ({ ...month, sky: { kind: 'cloud', cover } })),
    })
    const sum = (normals: ClimateNormals) =>
      hoursFromNormals(normals, site, '2026-06-10', 5).reduce((total, hour) => total + hour.global, 0)
    expect(sum(withCover(1)) / sum(withCover(0))).toBeCloseTo(0.25, 6)
  })
})

describe('the course of a mean day', () => {
  /** Highest 1, lowest 0, sunrise at 5 by the sun. */
  const course = (clock: number) => {
    if (clock >= 5 && clock <= 19) return airByDay(1, 0, clock, 5)
    return airByNight(airByDay(1, 0, 19, 5), 0, ((clock + 5) % 24) / 10)
  }
  it('agrees with the handbook’s day of cooling design within an eighth of the range', () => {
    // published [ASHRAE2017] ch. 14: share of the daily range below the high, hour 1 to 24 of the zone's clock, from memory; summer noon by the
    // sun is 1.3 h late on a clock with daylight saving in mid-zone.
    const table = [
      0.88, 0.92, 0.95, 0.98, 1, 0.98, 0.91, 0.74, 0.55, 0.38, 0.23, 0.13, 0.05, 0, 0, 0.06, 0.14, 0.24, 0.39,
      0.5, 0.59, 0.68, 0.75, 0.82,
    ]
    for (const [index, share] of table.entries())
      expect(Math.abs(1 - share - course((index + 1 - 0.7 + 24) % 24))).toBeLessThan(0.17)
  })
  it('meets its two extremes and has no step at sunrise, sunset or midnight', () => {
    expect(airByDay(30, 10, 13.86, 5.2)).toBeCloseTo(30, 9)
    expect(airByDay(30, 10, 5.2, 5.2)).toBe(10)
    const set = airByDay(30, 10, 18.8, 5.2)
    expect(airByNight(set, 12, 0)).toBe(set)
    expect(airByNight(set, 12, 1)).toBe(12)
    const hours = hoursFromNormals(dryInland, site, '2026-04-01', 30)
    // hand: the steepest the sine gets is π·range/(D + 3.72) = 2.5 K an hour for a range of 13 K.
    const steps = hours.slice(1).map((hour, index) => Math.abs(hour.air - hours[index]!.air))
    expect(Math.max(...steps)).toBeLessThan(2.6)
  })
})

describe('replayNormals', () => {
  it('is the same weather for the same seed and another for another', () => {
    const run = (seed: number) => replayNormals(dryInland, site, '2026-04-01', 10, chance(seed))
    expect(run(7)).toEqual(run(7))
    expect(run(7)).not.toEqual(run(8))
  })
  it('keeps the means over many years', () => {
    const random = chance(20260401)
    const springs = Array.from({ length: 60 }, () => replayNormals(dryInland, site, '2026-04-01', 30, random))
    const all = springs.flat()
    const planned = hoursFromNormals(dryInland, site, '2026-04-01', 30)
    // 60 Aprils: standard error of the air 3.2 K·√(2·3/1800)… about 0.2 K; of the wet share 0.018 with persistence; four of each.
    expect(Math.abs(mean(all.map(hour => hour.air)) - mean(planned.map(hour => hour.air)))).toBeLessThan(0.8)
    const wetDays = springs.map(
      hours => [...byDay(hours).values()].filter(day => day.some(hour => hour.rain > 0)).length,
    )
    expect(Math.abs(mean(wetDays) - 8)).toBeLessThan(1.5)
    expect(
      Math.abs(mean(all.map(hour => hour.wind)) / mean(planned.map(hour => hour.wind)) - 1),
    ).toBeLessThan(0.08)
    expect(
      Math.abs(mean(all.map(hour => hour.global)) / mean(planned.map(hour => hour.global)) - 1),
    ).toBeLessThan(0.08)
    expect(Math.abs(mean(all.map(hour => hour.rain)) * 720 - 45)).toBeLessThan(12)
  })
  it('strays day by day', () => {
    const hours = replayNormals(dryInland, site, '2026-07-01', 60, chance(3))
    const noons = [...byDay(hours).values()].map(day => mean(day.map(hour => hour.air)))
    const spread = Math.sqrt(mean(noons.map(noon => (noon - mean(noons)) ** 2)))
    expect(spread).toBeGreaterThan(1.5)
    expect(spread).toBeLessThan(6)
    expect(addDays('2026-07-01', 60)).toBe('2026-08-30')
  })
})

describe('checkNormals', () => {
  it('accepts what is in order', () => expect(checkNormals(dryInland).ok).toBe(true))
  it('tells every wrong figure with its place', () => {
    const months = dryInland.months
      .map((month, index) => (index === 6 ? { ...month, airMost: 91, wind: -1 } : month))
      .slice(0, 11)
    const checked = checkNormals({ ...dryInland, months })
    expect(checked).toMatchObject({ ok: false })
    if (checked.ok) return
    expect(checked.problems.map(problem => problem.at)).toEqual([
      'months[6].airMost',
      'months[6].wind',
      'months',
    ])
  })
  it('sees highs and lows swapped', () => {
    const months = dryInland.months.map(month => ({
      ...month,
      airMost: month.airLeast,
      airLeast: month.airMost,
    }))
    const checked = checkNormals({ ...dryInland, months })
    expect(checked.ok ? 0 : checked.problems.length).toBe(12)
  })
})
