import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { instantAt, localTime } from '../clock/index.js'
import { isBeyond } from '../limit/index.js'
import { dryInland, summerSite } from './fixtures/summer-site.js'
import {
  closedBy,
  closingBetween,
  crossingBetween,
  daylight,
  hoursFromNormals,
  openingBetween,
  openSpans,
  type PrintHour,
  printHours,
  type WeatherHour,
} from './index.js'

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
/** Wind and rain alone decide. */
const site = {
  ...summerSite,
  rules: { ...summerSite.rules, evaporationMost: { value: 50, source: 'the job' } },
}
/** Hours one after the other, each a change of a mild one. */
const inARow = (...changes: readonly Partial<WeatherHour>[]) =>
  printHours(
    site,
    changes.map((change, index) => ({ ...mild, ...change, start: mild.start + index * 3600 })),
  )
const { windMost } = summerSite.rules
const limitOf = (hour: PrintHour, kind: string) => hour.limits.find(limit => limit.kind === kind)!

describe('crossingBetween', () => {
  it('finds where a straight line between the middles of two hours meets the limit', () => {
    const most = windMost.value
    const [before, after] = inARow({ wind: most - 1 }, { wind: most + 3 })
    // hand: of 4 m/s between the middles the first goes to the limit: a quarter of an hour after the first middle.
    expect(crossingBetween(before!, after!, 'wind')).toBeCloseTo(mild.start + 1800 + 900, 6)
    const [falling, calm] = inARow({ wind: most + 3 }, { wind: most - 1 })
    // hand: downwards three quarters of it.
    expect(crossingBetween(falling!, calm!, 'wind')).toBeCloseTo(mild.start + 1800 + 2700, 6)
  })
  it('lies between the two middles whatever the limit, and only where it holds in one hour', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -5, max: 45, noNaN: true }),
        fc.double({ min: -5, max: 45, noNaN: true }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        (air, later, wind, windier) => {
          const [before, after] = inARow({ air, wind }, { air: later, wind: windier })
          for (const { kind } of before!.limits) {
            const at = crossingBetween(before!, after!, kind)
            const changes = isBeyond(limitOf(before!, kind)) !== isBeyond(limitOf(after!, kind))
            expect(at !== undefined).toBe(changes)
            if (at === undefined) continue
            expect(at).toBeGreaterThanOrEqual(before!.start + 1800)
            expect(at).toBeLessThanOrEqual(after!.start + 1800)
          }
        },
      ),
    ))
  it('changes with the hour for rain and gusts, which are known by the whole hour', () => {
    const [before, after] = inARow({}, { rain: 3, gust: 30 })
    for (const kind of ['rain', 'gust'] as const)
      expect(crossingBetween(before!, after!, kind)).toBe(after!.start)
  })
  it('follows the sun for daylight: within three minutes of civil dusk', () => {
    const zone = summerSite.site.timeZone
    const rules = { ...summerSite.rules, daylightNeeded: { value: 1, source: 'the job' } }
    const hours = printHours(
      { ...summerSite, rules },
      hoursFromNormals(dryInland, summerSite.site, '2026-07-14', 1),
    )
    // independent: dusk by the sun's own passage, solved apart.
    const { rise, set } = daylight({ ...summerSite.site }, '2026-07-14', -6)
    const moments = hours.flatMap((hour, i) =>
      i > 0 ? (crossingBetween(hours[i - 1]!, hour, 'daylight') ?? []) : [],
    )
    const today = moments.filter(at => localTime(at, zone).date === '2026-07-14')
    expect(Math.abs(today[0]! - rise!)).toBeLessThan(180)
    expect(Math.abs(today.at(-1)! - set!)).toBeLessThan(180)
  })
  it('is none between hours that do not follow each other', () => {
    const [before, after] = inARow({}, { wind: 30 })
    expect(crossingBetween(before!, { ...after!, start: after!.start + 3600 }, 'wind')).toBeUndefined()
  })
  it('comes nearer the truth with shorter means, as the interpolation of a bent curve does', () => {
    // independent: wind w(t) = 4 + 8 sin²: its own passage of the limit, against that found from the means of its hours.
    const wind = (hour: number) => 4 + 9 * Math.sin((Math.PI * hour) / 12) ** 2
    const mean = (hour: number) =>
      Array.from({ length: 600 }, (_, i) => wind(hour + (i + 0.5) / 600)).reduce((a, b) => a + b) / 600
    const hours = inARow(...Array.from({ length: 6 }, (_, hour) => ({ wind: mean(hour) })))
    const at = hours.flatMap((hour, i) =>
      i > 0 ? (crossingBetween(hours[i - 1]!, hour, 'wind') ?? []) : [],
    )[0]!
    const exact = (12 / Math.PI) * Math.asin(Math.sqrt((windMost.value - 4) / 9))
    expect(Math.abs((at - mild.start) / 3600 - exact) * 60).toBeLessThan(4)
  })
})

describe('closing and opening', () => {
  const most = windMost.value
  it('end by the limit that is passed first and begin when the last lets go', () => {
    const [before, after] = inARow({ wind: most - 1 }, { wind: most + 1, rain: 5 })
    expect(closingBetween(before!, after!)).toMatchObject({ at: after!.start, limit: { kind: 'wind' } })
    expect(
      openingBetween(...(inARow({ wind: most + 1, rain: 5 }, { wind: most - 3 }) as [PrintHour, PrintHour])),
    ).toBe(mild.start + 3600)
  })
  it('give a day its open stretches to the minute, with what ends each', () => {
    const hours = inARow(
      { wind: most + 2 },
      { wind: most - 2 },
      {},
      { wind: most - 1 },
      { wind: most + 3 },
      {},
    )
    const [first, second] = openSpans(hours)
    expect((first!.from - mild.start) / 60).toBeCloseTo(60, 6)
    expect((first!.until - mild.start) / 60).toBeCloseTo(3.5 * 60 + 15, 6)
    expect(first!.endedBy).toMatchObject({ kind: 'wind', at: first!.until })
    expect(second!.until).toBe(mild.start + 6 * 3600)
    expect(second!.endedBy).toBeUndefined()
  })
  it('cover every open hour’s middle and no closed one’s', () => {
    const hours = printHours(summerSite, hoursFromNormals(dryInland, summerSite.site, '2026-07-14', 20))
    const spans = openSpans(hours)
    for (const hour of hours) {
      const middle = hour.start + 1800
      const inside = spans.some(({ from, until }) => from <= middle && middle <= until)
      expect([hour.start, inside]).toEqual([hour.start, hour.open])
    }
  })
  it('count the chiller where there is one', () => {
    const hot = { air: 41, global: 700, beam: 600, diffuse: 150, humidity: 0.2 }
    const chiller = { rate: 1, temperature: 4 }
    const hours = printHours({ ...summerSite, batching: { ...summerSite.batching, chiller } }, [
      mild,
      { ...mild, ...hot, start: mild.start + 3600 },
    ])
    expect(closedBy(hours[1]!).map(limit => limit.kind)).toContain('mix-hot')
    expect(hours[1]!.mixTemperatureChilled!).toBeLessThan(summerSite.rules.mixTemperatureMost.value)
    expect(crossingBetween(hours[0]!, hours[1]!, 'mix-hot')).toBeUndefined()
  })
})

describe('the limits of printHours', () => {
  it('carry the moment they are passed in the first hour they close, and in no other', () => {
    const most = windMost.value
    const hours = inARow({ wind: most - 1 }, { wind: most + 3 }, { wind: most + 4 })
    expect(hours.map(hour => limitOf(hour, 'wind').at)).toEqual([undefined, mild.start + 2700, undefined])
  })
})
