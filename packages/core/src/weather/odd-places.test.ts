import { describe, expect, it } from 'vitest'
import { instantAt, localTime, zoneOffset } from '../clock/index.js'
import { curePlan, wallWeather } from '../cure/index.js'
import type { Site } from '../job/index.js'
import { dryInland, summerSite } from './fixtures/summer-site.js'
import {
  checkWeather,
  closingBetween,
  daylight,
  faceIrradiance,
  hoursFromNormals,
  openSpans,
  printHours,
  solarPosition,
} from './index.js'

/** The same year of normals somewhere else on Earth. */
const placed = (change: Partial<Site>): Site => ({ ...summerSite.site, ...change })
/** Half a year on, for the other half of the Earth. */
const turned = {
  ...dryInland,
  months: dryInland.months.map(
    (_, month) => dryInland.months[(month + 6) % 12]!,
  ) as unknown as typeof dryInland.months,
}
const rules = { ...summerSite.rules, daylightNeeded: { value: 1, source: 'the job' } }
const verdictsAt = (site: Site, date: string, days: number, normals = dryInland) =>
  printHours({ ...summerSite, site, rules }, hoursFromNormals(normals, site, date, days))

describe('a place where the sun does not set', () => {
  const site = placed({ latitude: 69.6, longitude: 18.9, timeZone: 'Europe/Oslo' })
  it('is light enough all day in June and at no hour in December', () => {
    const light = (date: string) =>
      verdictsAt(site, date, 1).filter(({ limits }) =>
        limits.some(({ kind, demand, capacity }) => kind === 'daylight' && demand <= capacity),
      ).length
    expect(daylight(site, '2026-06-21').kind).toBe('polar-day')
    expect(light('2026-06-21')).toBe(24)
    // Civil twilight at noon, for a few hours.
    expect(daylight(site, '2026-12-21').kind).toBe('polar-night')
    expect(light('2026-12-21')).toBeLessThan(6)
  })
  it('has good weather from normals, sun at midnight included', () =>
    expect(checkWeather(hoursFromNormals(dryInland, site, '2026-06-18', 6), site)).toEqual([]))
})

describe('a place south of the equator', () => {
  const site = placed({ latitude: -34.9, longitude: 138.6, timeZone: 'Australia/Adelaide' })
  it('has its hot mix in January and its sun on the faces that look north', () => {
    const warmest = (date: string) =>
      Math.max(...verdictsAt(site, date, 7, turned).map(hour => hour.mixTemperature))
    expect(warmest('2026-01-10')).toBeGreaterThan(warmest('2026-07-10') + 10)
    const noon = instantAt('2026-01-10', 13 * 3600, site.timeZone)
    const sun = solarPosition(noon, site.latitude, site.longitude)
    const sky = { global: 900, beam: 800, diffuse: 120 }
    expect(faceIrradiance(sky, sun, 0).total).toBeGreaterThan(faceIrradiance(sky, sun, Math.PI).total + 100)
  })
  it('reports nothing wrong with its own sun', () =>
    expect(checkWeather(hoursFromNormals(turned, site, '2026-01-10', 20), site)).toEqual([]))
})

describe('a leap day', () => {
  it('is a day like any other: 24 hours, each once, with weather of its month', () => {
    const hours = hoursFromNormals(dryInland, summerSite.site, '2028-02-28', 3)
    const dates = hours.map(({ start }) => localTime(start, summerSite.site.timeZone).date)
    expect(dates.filter(date => date === '2028-02-29')).toHaveLength(24)
    expect(new Set(hours.map(({ start }) => start)).size).toBe(72)
    expect(checkWeather(hours, summerSite.site)).toEqual([])
  })
})

describe.each([
  ['half an hour', 'Asia/Kolkata', 77.6, 13.0, 5.5],
  ['three quarters', 'Asia/Kathmandu', 85.3, 27.7, 5.75],
])('a clock %s off the full hour', (_, timeZone, longitude, latitude, ahead) => {
  const site = placed({ timeZone, longitude, latitude })
  const hours = verdictsAt(site, '2026-04-10', 16)
  it('has hours that begin with its own', () => {
    expect(zoneOffset(hours[0]!.start, timeZone)).toBe(ahead * 3600)
    expect(localTime(hours[0]!.start, timeZone).clock).toBe(0)
    expect(
      checkWeather(
        hours.map(({ weather }) => weather),
        site,
      ),
    ).toEqual([])
  })
  it('has verdicts, crossings and a cure as any other', () => {
    const spans = openSpans(hours)
    expect(spans.length).toBeGreaterThan(10)
    for (const { from, until } of spans) expect(until).toBeGreaterThanOrEqual(from)
    const weather = wallWeather(
      site,
      hours.map(hour => hour.weather),
      { leftBearing: 1, height: 1 },
    )
    const end = hours[0]!.start + 10 * 3600
    const plan = curePlan({
      job: summerSite,
      lift: { id: 'A1', start: end - 7200, end },
      build: { kind: 'double', beadWidth: 0.05, thickness: 0.25 },
      weather,
      mixTemperature: 25,
      area: { left: 10, right: 10 },
    })
    expect(plan.milestones.every(({ at }) => at !== undefined)).toBe(true)
    // The face is hottest by day, by the sun of the place, not at night.
    const clock = localTime(plan.peak.at, timeZone).clock / 3600
    expect(clock).toBeGreaterThan(8)
    expect(clock).toBeLessThan(20)
  })
})

describe('a summer-time change', () => {
  const { site } = summerSite
  it.each([
    ['spring', '2026-03-29', 23],
    ['autumn', '2026-10-25', 25],
  ])('in %s gives a day of its own hours, each once', (_, date, count) => {
    const hours = verdictsAt(site, date, 2)
    const today = hours.filter(({ start }) => localTime(start, site.timeZone).date === date)
    expect(today).toHaveLength(count)
    expect(hours.every((hour, i) => i === 0 || hour.start - hours[i - 1]!.start === 3600)).toBe(true)
  })
})

describe('a site below the sea', () => {
  const site = placed({ latitude: 31.5, longitude: 35.5, elevation: -430, timeZone: 'Asia/Jerusalem' })
  it('has denser air than the sea and no complaint', () => {
    const hours = hoursFromNormals(dryInland, site, '2026-05-10', 5)
    // [ASHRAE2017] standard atmosphere at −500 m is 107,478 Pa.
    expect(hours[0]!.pressure).toBeGreaterThan(101325)
    expect(hours[0]!.pressure).toBeLessThan(107478)
    expect(checkWeather(hours, site)).toEqual([])
    expect(verdictsAt(site, '2026-05-10', 5).some(hour => hour.open)).toBe(true)
  })
})

describe('a gap in the weather', () => {
  it('has no crossing across it and ends the open stretch at the last known hour', () => {
    const hours = verdictsAt(summerSite.site, '2026-05-10', 1).filter((_, index) => index < 10 || index > 12)
    const [before, after] = [hours[9]!, hours[10]!]
    expect(closingBetween(before, after)).toBeUndefined()
    const end = openSpans(hours).find(({ until }) => until > before.start && until <= after.start)
    if (before.open) expect(end?.until).toBe(before.start + 3600)
    expect(before.open).toBe(true)
  })
})
