import { describe, expect, it } from 'vitest'
import { alignHours, mergeHours, sourceSpans, type WeatherHour } from './index.js'

const base = Date.UTC(2026, 6, 1) / 1000
const hour = (
  index: number,
  source: WeatherHour['source'],
  change: Partial<WeatherHour> = {},
): WeatherHour => ({
  start: base + index * 3600,
  air: 20,
  humidity: 0.5,
  wind: 2,
  gust: 3,
  rain: 0,
  global: 0,
  beam: 0,
  diffuse: 0,
  pressure: 101325,
  source,
  ...change,
})
const run = (from: number, until: number, source: WeatherHour['source'], change: Partial<WeatherHour> = {}) =>
  Array.from({ length: until - from }, (_, index) => hour(from + index, source, change))

describe('mergeHours', () => {
  it('takes measured over forecast over history over normals, whatever the order given', () => {
    const series = [run(0, 10, 'normals'), run(0, 8, 'history'), run(2, 6, 'forecast'), run(0, 3, 'measured')]
    const wanted = [
      { source: 'measured', from: base, until: base + 3 * 3600 },
      { source: 'forecast', from: base + 3 * 3600, until: base + 6 * 3600 },
      { source: 'history', from: base + 6 * 3600, until: base + 8 * 3600 },
      { source: 'normals', from: base + 8 * 3600, until: base + 10 * 3600 },
    ]
    expect(sourceSpans(mergeHours(series))).toEqual(wanted)
    expect(sourceSpans(mergeHours([...series].reverse()))).toEqual(wanted)
  })
  it('marks where a forecast ends in the middle of a campaign', () =>
    expect(sourceSpans(mergeHours([run(0, 72, 'normals'), run(0, 40, 'forecast')]))[1]).toEqual({
      source: 'normals',
      from: base + 40 * 3600,
      until: base + 72 * 3600,
    }))
  it('fills a gap of a better source from the next', () => {
    const measured = [...run(0, 2, 'measured'), ...run(3, 5, 'measured')]
    expect(mergeHours([run(0, 5, 'normals'), measured]).map(({ source }) => source)).toEqual([
      'measured',
      'measured',
      'normals',
      'measured',
      'measured',
    ])
  })
  it('gives each hour once and in order', () => {
    const merged = mergeHours([[hour(3, 'normals'), hour(1, 'normals')], run(0, 4, 'forecast')])
    expect(merged.map(({ start }) => (start - base) / 3600)).toEqual([0, 1, 2, 3])
  })
  it('is empty for nothing', () => expect(mergeHours([[], []])).toEqual([]))
})

describe('alignHours', () => {
  it('brings a half-hour zone’s hours to the full hour without losing rain or warmth', () => {
    const half = [10, 20, 30].map((air, index) =>
      hour(index, 'measured', { start: base + index * 3600 - 1800, air, rain: index, gust: 5 + index }),
    )
    const whole = alignHours(half, 0)
    // hand: [−30 min, 30 min) and [30, 90): the hour from 0 has half of each.
    expect(whole.map(({ start, air, rain, gust }) => [(start - base) / 3600, air, rain, gust])).toEqual([
      [0, 15, 0.5, 6],
      [1, 25, 1.5, 7],
    ])
  })
  it('leaves hours that already fit untouched', () => {
    const hours = run(0, 3, 'measured')
    expect(alignHours(hours, 0)).toBe(hours)
  })
  it('does not blend across a gap', () => {
    const gap = [
      hour(0, 'measured', { start: base + 1800 }),
      hour(0, 'measured', { start: base + 1800 + 7200 }),
    ]
    expect(alignHours(gap, 0)).toEqual([])
  })
})
