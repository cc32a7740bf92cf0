import { describe, expect, it } from 'vitest'
import { instantAt } from '../clock/index.js'
import { replayYears, type WeatherHour } from './index.js'

/** Hours from local standard midnight of one day to another; the air tells the hour of its own year. */
function history(from: string, until: string, utcOffset: number): WeatherHour[] {
  const hours: WeatherHour[] = []
  const end = Date.parse(`${until}T00:00:00Z`) / 1000
  for (let local = Date.parse(`${from}T00:00:00Z`) / 1000; local < end; local += 3600) {
    const date = new Date(local * 1000)
    const air =
      (date.getUTCFullYear() % 100) +
      date.getUTCMonth() +
      date.getUTCDate() / 100 +
      date.getUTCHours() / 10000
    hours.push({
      start: local - utcOffset,
      air,
      humidity: 0.5,
      wind: 0,
      gust: 0,
      rain: 0,
      global: 0,
      beam: 0,
      diffuse: 0,
      pressure: 1e5,
      source: 'history',
    })
  }
  return hours
}
const at = (year: number, month: number, day: number, hour: number) =>
  (year % 100) + month - 1 + day / 100 + hour / 10000

describe('replayYears', () => {
  const utcOffset = 3600
  const past = { hours: history('2015-01-01', '2018-01-01', utcOffset), utcOffset }

  it('lays each past year over the campaign, hour of the day by standard hour', () => {
    const years = replayYears(past, 'Europe/Madrid', '2026-07-10', 2)
    expect(years.map(({ year, hours }) => [year, hours.length])).toEqual([
      [2015, 48],
      [2016, 48],
      [2017, 48],
    ])
    // hand: local midnight on 10 July is summer time, 22:00 UTC, 23:00 standard time of the 9th.
    expect(years[0]!.hours[0]!.air).toBeCloseTo(at(2015, 7, 9, 23), 9)
    expect(years[0]!.hours[0]!.start).toBe(instantAt('2026-07-10', 0, 'Europe/Madrid'))
    expect(years[2]!.hours[1]!.air).toBeCloseTo(at(2017, 7, 10, 0), 9)
  })
  it('repeats 28 February where a year has no 29th', () => {
    const years = replayYears(past, 'Etc/GMT-1', '2028-02-28', 3)
    expect(years.map(({ hours }) => hours[24]!.air.toFixed(4))).toEqual(
      [at(2015, 2, 28, 0), at(2016, 2, 29, 0), at(2017, 2, 28, 0)].map(value => value.toFixed(4)),
    )
    expect(years[0]!.hours[48]!.air).toBeCloseTo(at(2015, 3, 1, 0), 9)
  })
  it('goes on into the next year, or round a single one', () => {
    const years = replayYears(past, 'Etc/GMT-1', '2026-12-31', 2)
    expect(years.map(({ hours }) => hours[24]!.air.toFixed(4))).toEqual(
      [at(2016, 1, 1, 0), at(2017, 1, 1, 0), at(2017, 1, 1, 0)].map(value => value.toFixed(4)),
    )
  })
  it('goes round a typical year however long the campaign', () => {
    const typical = { hours: history('2001-01-01', '2002-01-01', utcOffset), utcOffset }
    const years = replayYears(typical, 'Europe/Madrid', '2026-11-25', 300)
    expect(years.map(({ year, hours }) => [year, hours.length])).toEqual([[2001, 300 * 24 - 1]])
  })
  it('leaves out a year that misses an hour', () => {
    const holed = {
      ...past,
      hours: past.hours.filter(hour => Math.abs(hour.air - at(2016, 7, 10, 5)) > 1e-9),
    }
    expect(replayYears(holed, 'Europe/Madrid', '2026-07-10', 2).map(({ year }) => year)).toEqual([2015, 2017])
  })
})
