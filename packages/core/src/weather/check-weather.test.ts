import { describe, expect, it } from 'vitest'
import { dryInland, summerSite } from './fixtures/summer-site.js'
import { checkStation, checkWeather, distanceBetween, hoursFromNormals, type WeatherHour } from './index.js'

const { site } = summerSite
const good = hoursFromNormals(dryInland, site, '2026-06-01', 20)
const codes = (hours: readonly WeatherHour[]) => checkWeather(hours, site).map(problem => problem.code)
const change = (index: number, values: Partial<WeatherHour>) =>
  good.map((hour, at) => (at === index ? { ...hour, ...values } : hour))

describe('checkWeather', () => {
  it('is silent about good hours', () => expect(checkWeather(good, site)).toEqual([]))
  it('counts missing hours', () => {
    const [problem] = checkWeather([...good.slice(0, 10), ...good.slice(13)], site)
    expect(problem).toMatchObject({ code: 'weather/gap', values: { count: 3 } })
  })
  it('sees doubles and steps back', () => {
    expect(codes([...good.slice(0, 10), good[9]!, ...good.slice(10)])).toEqual(['weather/double'])
    expect(codes([...good.slice(0, 10), good[2]!])).toEqual(['weather/back'])
  })
  it.each([
    ['air in °F', { air: 80 }, '°F'],
    ['humidity in per cent', { humidity: 55 }, 'per cent'],
    ['wind in km/h', { wind: 90, gust: 95 }, 'km/h'],
    ['pressure in hPa', { pressure: 1013 }, 'hPa'],
    ['radiation in kJ', { global: 2900 }, 'kJ'],
    ['a running total of rain', { rain: 900 }, 'total'],
    ['nothing at all', { air: Number.NaN }, '°F'],
  ])('names %s', (_, values, hint) => {
    const problem = checkWeather(change(12, values), site).find(({ code }) => code === 'weather/impossible')
    expect(problem?.say).toContain(hint)
    expect(problem?.values?.count).toBe(1)
  })
  it('tells one wrong unit once, with its count', () => {
    const fahrenheit = good.map(hour => ({ ...hour, air: hour.air * 1.8 + 32 }))
    const problems = checkWeather(fahrenheit, site)
    expect(problems).toHaveLength(1)
    expect(problems[0]!.values!.count).toBeGreaterThan(100)
  })
  it('sees a clock twelve hours off by its sun at night', () => {
    const shifted = good.map(hour => ({ ...hour, start: hour.start + 12 * 3600 }))
    expect(codes(shifted)).toContain('weather/sun-at-night')
  })
  it('sees more sun than the sun has', () => {
    const dawn = good.findIndex(hour => hour.global > 0 && hour.global < 100)
    expect(codes(change(dawn, { global: 1400 }))).toEqual(['weather/too-much-sun'])
  })
})

describe('checkStation', () => {
  const station = { name: 'Far', latitude: 41, longitude: -3.7, elevation: 660 }
  it('warns of a station far away or much higher, and of nothing near', () => {
    expect(checkStation({ ...station, latitude: 40.1 }, site)).toEqual([])
    expect(checkStation(station, site).map(({ verdict, unit }) => [verdict, unit])).toEqual([['warn', 'm']])
    expect(checkStation({ ...station, latitude: 40.1, elevation: 1400 }, site)[0]!.say).toContain('750 m')
    // Hand: 750 m / 0.3048 = 2461 ft; 750 × 0.0065 = 4.9 K, 9 °F apart.
    expect(checkStation({ ...station, latitude: 40.1, elevation: 1400 }, site, 'imperial')[0]!.say).toMatch(
      /2461 ft .* about 9 °F/,
    )
  })
  it('measures along the great circle', () => {
    // closed form: one degree of latitude on 6,371 km is 111.195 km; a quarter of the Earth from pole to equator 10,007.5 km.
    expect(
      distanceBetween({ latitude: 40, longitude: 0 }, { latitude: 41, longitude: 0 }) / 1000,
    ).toBeCloseTo(111.195, 2)
    expect(
      distanceBetween({ latitude: 90, longitude: 0 }, { latitude: 0, longitude: 77 }) / 1000,
    ).toBeCloseTo(10007.54, 1)
  })
})
