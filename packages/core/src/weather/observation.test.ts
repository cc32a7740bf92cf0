import { describe, expect, it } from 'vitest'
import { completeHours, type Observation, saturationPressure, standardPressure } from './index.js'

const site = { latitude: 40, longitude: 0, elevation: 500 }
const base = Date.UTC(2026, 6, 1) / 1000
const day = (change: (hour: number) => Partial<Observation>): readonly Observation[] =>
  Array.from({ length: 24 }, (_, hour) => ({
    start: base + hour * 3600,
    air: 20 - 8 * Math.cos(((hour - 2) / 12) * Math.PI),
    ...change(hour),
  }))

describe('completeHours', () => {
  it('keeps everything that was observed', () => {
    const full = {
      humidity: 0.4,
      wind: 3,
      gust: 7,
      rain: 0.2,
      global: 100,
      beam: 90,
      diffuse: 40,
      pressure: 95000,
    }
    const { hours, assumed } = completeHours(
      day(() => full),
      site,
      'measured',
    )
    expect(assumed).toEqual([])
    expect(hours[5]).toMatchObject({ ...full, source: 'measured' })
  })
  it('takes the dew point where the humidity is not told', () => {
    const { hours } = completeHours(
      day(() => ({ dewPoint: 8, wind: 1 })),
      site,
      'measured',
    )
    for (const hour of hours)
      expect(hour.humidity).toBeCloseTo(Math.min(1, saturationPressure(8) / saturationPressure(hour.air)), 12)
  })
  it('counts and names what it assumed', () => {
    const { hours, assumed } = completeHours(
      day(hour => (hour < 6 ? { wind: 4 } : {})),
      site,
      'history',
    )
    const counts = Object.fromEntries(assumed.map(({ what, hours: count }) => [what.split(':')[0], count]))
    expect(counts).toEqual({ humidity: 24, wind: 18, gusts: 24, rain: 24, sun: 24, 'air pressure': 24 })
    // published [Allen1998], from memory: 2 m/s at 2 m; dew at the coolest hour makes that hour saturated.
    expect(hours[10]!.wind).toBeCloseTo(2 * 5 ** (1 / 7), 12)
    expect(Math.max(...hours.map(hour => hour.humidity))).toBeCloseTo(1, 12)
    expect(hours[0]!.pressure).toBe(standardPressure(500))
  })
  it('makes a believable sun from the day’s range, none at night', () => {
    const { hours } = completeHours(
      day(() => ({})),
      site,
      'history',
    )
    const total = hours.reduce((sum, hour) => sum + hour.global * 3600, 0) / 1e6
    // hand [Allen1998]: 0.16·√15.7…16 = 0.64 of 41.8 MJ/m² outside the air at 40° N on 1 July = 26.6 MJ; the hourly sum of sines 2 %.
    expect(Math.abs(total - 26.6)).toBeLessThan(0.8)
    expect(hours[0]!.global).toBe(0)
    for (const hour of hours) expect(hour.diffuse).toBeLessThanOrEqual(hour.global + 1e-9)
  })
  it('adds beam and sky up where the global is not told', () => {
    const { hours } = completeHours(
      day(() => ({ beam: 800, diffuse: 100 })),
      site,
      'measured',
    )
    expect(hours[12]!.global).toBeGreaterThan(800)
    expect(hours[0]!.global).toBe(100)
  })
})
