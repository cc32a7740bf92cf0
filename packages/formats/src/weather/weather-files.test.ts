import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { climateOfHours, hoursFromNormals, replayYears } from '@dawnlift/core/weather'
import { describe, expect, it } from 'vitest'
import { noRealInputs, realFolder } from '../../../../tests/sources.js'
import { type HourlyMapping, readHourlyCsv, readWeather, typicalYear, type WeatherFile } from './index.js'

const folder = realFolder('weather')
const present = existsSync(folder)
const text = (name: string) => readFileSync(join(folder, name), 'utf8')
const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0)

function read(name: string): WeatherFile {
  const file = readWeather(text(name), name)
  if (!file.ok) throw new Error(file.problems.map(({ say }) => say).join('\n'))
  return file.value
}

// independent: every number below was counted by a few lines of Python over the file's own columns (csv module, no reader of ours).
describe.skipIf(!present)(`real weather files${present ? '' : ` (skipped: ${noRealInputs})`}`, () => {
  it('reads the TMY3 year to its own summary', () => {
    const file = read('greensboro.tmy3.csv')
    const air = file.hours.map(hour => hour.air)
    expect(file.station).toMatchObject({ latitude: 36.1, longitude: -79.95, elevation: 273 })
    expect(file.utcOffset).toBe(-5 * 3600)
    expect(air).toHaveLength(8760)
    expect([Math.min(...air), Math.max(...air)]).toEqual([-16.7, 35.6])
    expect(mean(air)).toBeCloseTo(14.4218, 4)
    expect(air.filter(value => value < 5)).toHaveLength(1591)
    expect(file.hours.filter(hour => hour.rain > 0)).toHaveLength(358)
    expect(sum(file.hours.map(hour => hour.global)) * 0.0036).toBeCloseTo(5638.33, 2)
    expect(mean(file.hours.map(hour => hour.wind))).toBeCloseTo(3.0544, 4)
    expect(file.yearsOfMonths).toEqual([
      1988, 1996, 1990, 1980, 1986, 1989, 1981, 2001, 2003, 1980, 1994, 1980,
    ])
  })
  it('sees that its rain is in tenths', () => {
    const file = read('greensboro.tmy3.csv')
    expect(file.warnings.map(({ code }) => code)).toContain('weather/tmy3-rain-tenths')
    // The column adds up to 8345: 834.5 mm is a year's rain there, 8.3 m is none's.
    expect(sum(file.hours.map(hour => hour.rain))).toBeCloseTo(834.5, 6)
  })
  it('reads the EPW year to its own summary, missing codes as missing', () => {
    const file = read('pvgis-turin.epw')
    const air = file.hours.map(hour => hour.air)
    expect(file.station).toMatchObject({ latitude: 45, longitude: 8, elevation: 250 })
    expect(air).toHaveLength(8760)
    expect([Math.min(...air), Math.max(...air)]).toEqual([-2.34, 34.33])
    expect(mean(air)).toBeCloseTo(13.5641, 4)
    expect(air.filter(value => value < 5)).toHaveLength(1460)
    expect(sum(file.hours.map(hour => hour.global)) * 0.0036).toBeCloseTo(5169.1, 1)
    expect(file.hours.filter(hour => hour.global > 0)).toHaveLength(4228)
    expect(mean(file.hours.map(hour => hour.wind))).toBeCloseTo(1.2101, 4)
    expect(mean(file.hours.map(hour => hour.pressure))).toBeCloseTo(99854.91, 1)
    expect(file.yearsOfMonths).toEqual([
      2018, 2007, 2009, 2013, 2008, 2006, 2011, 2010, 2020, 2006, 2007, 2016,
    ])
    // Its rain is 999 in every hour: missing, not a flood.
    expect(file.hours.every(hour => hour.rain === 0)).toBe(true)
    expect(file.assumed.find(({ what }) => what.startsWith('rain'))?.hours).toBe(8760)
  })
  it.each(['greensboro.tmy3.csv', 'pvgis-turin.epw'])(
    'dates the months of %s into one year, hour after hour',
    name => {
      const { hours, utcOffset } = read(name)
      expect(hours[0]!.start + utcOffset).toBe(Date.UTC(typicalYear, 0, 1) / 1000)
      expect(hours.every((hour, index) => index === 0 || hour.start === hours[index - 1]!.start + 3600)).toBe(
        true,
      )
    },
  )
  it('reads the station normals, whose first hour is missing and whose humidity nobody gave', () => {
    const station = { name: 'Seattle', latitude: 47.6, longitude: -122.3, elevation: 40 }
    const mapping: HourlyMapping = {
      time: { column: 'date', marks: 'start', zone: '-08:00' },
      columns: {
        air: { column: 'temperature', unit: '°C' },
        wind: { column: 'wind', unit: 'm/s' },
        pressure: { column: 'pressure', unit: 'hPa' },
      },
    }
    const file = readHourlyCsv(text('seattle-weather-hourly-normals.csv'), 'seattle.csv', station, mapping)
    if (!file.ok) throw new Error(JSON.stringify(file.problems))
    const air = file.value.hours.map(hour => hour.air)
    expect(air).toHaveLength(8759)
    expect([Math.min(...air), Math.max(...air)]).toEqual([3.1, 24.4])
    expect(mean(air)).toBeCloseTo(11.1276, 4)
    expect(mean(file.value.hours.map(hour => hour.wind))).toBeCloseTo(3.5976, 4)
    expect(mean(file.value.hours.map(hour => hour.pressure)) / 100).toBeCloseTo(1017.221, 3)
    expect(file.value.assumed.map(({ what }) => what.split(':')[0]).sort()).toEqual([
      'gusts',
      'humidity',
      'rain',
      'sun',
    ])
    expect(file.value.warnings).toEqual([])
  })
  it('lays a typical year over a campaign', () => {
    const { hours, utcOffset } = read('greensboro.tmy3.csv')
    const years = replayYears({ hours, utcOffset }, 'America/New_York', '2027-12-20', 30)
    expect(years.map(({ year, hours: laid }) => [year, laid.length])).toEqual([[typicalYear, 720]])
  })
})

describe.skipIf(!present)('climate normals against the year they come from', () => {
  it.each([
    ['greensboro.tmy3.csv', 'Etc/GMT+5'],
    ['pvgis-turin.epw', 'Etc/GMT-1'],
  ])('give back the mean day of every month of %s within 1.2 K', (name, standard) => {
    const { hours, station } = read(name)
    const site = { ...station, timeZone: standard }
    const made = hoursFromNormals(climateOfHours(name, name, hours, standard), site, '2001-01-01', 365)
    // independent: real hours. The curve claims about 1 K against mean days; the month's mean follows within 1 K.
    for (let month = 0; month < 12; month += 1) {
      const of = (list: typeof hours) =>
        list.filter(hour => new Date(hour.start * 1000).getUTCMonth() === month)
      const [real, mean12] = [of(hours), of(made)]
      expect(Math.abs(mean(real.map(hour => hour.air)) - mean(mean12.map(hour => hour.air)))).toBeLessThan(1)
      const atHour = (list: typeof hours, clock: number) =>
        mean(list.filter(hour => (hour.start / 3600) % 24 === clock).map(hour => hour.air))
      const off = Array.from({ length: 24 }, (_, clock) => atHour(real, clock) - atHour(mean12, clock))
      expect(Math.sqrt(mean(off.map(value => value ** 2)))).toBeLessThan(1.2)
    }
    // The year's radiation comes back, and rain days within two.
    expect(sum(made.map(hour => hour.global)) / sum(hours.map(hour => hour.global))).toBeCloseTo(1, 1)
  })
})
