import { describe, expect, it } from 'vitest'
import {
  type HourlyMapping,
  readEpw,
  readHourlyCsv,
  readTmy3,
  readUnit,
  readWeather,
  weatherUnits,
} from './index.js'

const station = { name: 'Plot', latitude: 40, longitude: -3.7, elevation: 600 }
const mapping = (zone: string, change: Partial<HourlyMapping['time']> = {}): HourlyMapping => ({
  time: { column: 'time', marks: 'start', zone, ...change },
  columns: { air: { column: 'T', unit: '°C' } },
})
const table = (...stamps: readonly string[]) =>
  ['time,T', ...stamps.map((stamp, index) => `${stamp},${10 + index}`)].join('\n')
const starts = (text: string, map: HourlyMapping) => {
  const file = readHourlyCsv(text, 'x.csv', station, map)
  return file.ok
    ? file.value.hours.map(hour => new Date(hour.start * 1000).toISOString().slice(0, 16))
    : file.problems
}
const codesOf = (result: ReturnType<typeof readHourlyCsv>) =>
  result.ok ? [] : result.problems.map(({ code, at }) => [code, at])

/** A made-up EPW of two hours. */
const epw = (lines: readonly string[]) =>
  [
    'LOCATION,Nowhere,-,-,test,1,40.0,-3.7,1.0,600.0',
    'DESIGN CONDITIONS,0',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVING,No,0,0,0',
    'COMMENTS 1,',
    'COMMENTS 2,',
    'DATA PERIODS,1,1,Data,Sunday,1/1,12/31',
    ...lines,
  ].join('\r\n')
const epwHour = (hour: number, air: string, rain = '0.4') =>
  `2026,7,1,${hour},0,?,${air},12.0,40,94000,9999,9999,300,500,600,120,9999,9999,9999,9999,180,3.2,5,5,9999,99999,9,999999999,0,0.1,0,99,0.2,${rain},1`

describe('readHourlyCsv', () => {
  it('follows summer time through the hour that is shown twice', () =>
    // hand: Madrid leaves summer time on 25 October 2026 at 01:00 UTC; the clock shows 02:00 twice.
    expect(
      starts(
        table('2026-10-25 01:00', '2026-10-25 02:00', '2026-10-25 02:00', '2026-10-25 03:00'),
        mapping('Europe/Madrid'),
      ),
    ).toEqual(['2026-10-24T23:00', '2026-10-25T00:00', '2026-10-25T01:00', '2026-10-25T02:00']))
  it('and through the hour that is never shown', () =>
    expect(starts(table('2026-03-29 01:00', '2026-03-29 03:00'), mapping('Europe/Madrid'))).toEqual([
      '2026-03-29T00:00',
      '2026-03-29T01:00',
    ]))
  it('warns of an hour given twice where no clock shows one twice', () => {
    const file = readHourlyCsv(
      table('2026-07-01 01:00', '2026-07-01 01:00'),
      'x.csv',
      station,
      mapping('Europe/Madrid'),
    )
    expect(file.ok && file.value.warnings.map(({ code }) => code)).toEqual(['weather/double'])
  })
  it('knows fixed offsets, stamps with their own, hours marked at their end, and other orders of the date', () => {
    expect(starts(table('2026-07-01T06:00'), mapping('+05:30'))).toEqual(['2026-07-01T00:30'])
    expect(starts(table('2026-07-01T06:00-03:00'), mapping('UTC'))).toEqual(['2026-07-01T09:00'])
    expect(starts(table('2026-07-01T06:00Z'), mapping('Asia/Kolkata'))).toEqual(['2026-07-01T06:00'])
    expect(starts(table('2026-07-01 24:00'), mapping('UTC', { marks: 'end' }))).toEqual(['2026-07-01T23:00'])
    expect(starts(table('01.07.2026 06:00'), mapping('UTC', { order: 'day-first' }))).toEqual([
      '2026-07-01T06:00',
    ])
    expect(starts(table('7/1/2026 6:00'), mapping('UTC', { order: 'month-first' }))).toEqual([
      '2026-07-01T06:00',
    ])
  })
  it('reads semicolons, decimal commas, quotes and signs of missing values, in any unit', () => {
    const text = '\uFEFFtime;"T, air";RH;wind\n2026-07-01 06:00;68,0;55;-\n2026-07-01 07:00;"69,8";;10\n'
    const file = readHourlyCsv(text, 'x.csv', station, {
      time: { column: 'time', marks: 'start', zone: 'UTC' },
      columns: {
        air: { column: 'T, air', unit: '°F' },
        humidity: { column: 'RH', unit: '%' },
        wind: { column: 'wind', unit: 'kn' },
      },
      missing: ['-'],
      decimalComma: true,
    })
    if (!file.ok) throw new Error(JSON.stringify(file.problems))
    const [a, b] = file.value.hours
    // hand: 68 °F = 20 °C, 69.8 °F = 21 °C; 10 kn = 5.14444 m/s.
    expect(a!.air).toBeCloseTo(20, 9)
    expect(b!.air).toBeCloseTo(21, 9)
    expect(a!.humidity).toBeCloseTo(0.55, 12)
    expect(b!.wind).toBeCloseTo(5.144444, 5)
    expect(file.value.assumed.map(({ what, hours }) => [what.split(':')[0], hours])).toContainEqual([
      'wind',
      1,
    ])
  })
  it('warns of 80 °C air', () => {
    const file = readHourlyCsv('time,T\n2026-07-01 06:00,80\n', 'x.csv', station, mapping('UTC'))
    expect(file.ok && file.value.warnings[0]!.say).toContain('°F')
  })
  it('tells all wrong lines with their number, twenty at most', () => {
    const text = `time,T\n2026-07-01 06:00,warm\n2026-02-31 06:00,3\n${'x,1\n'.repeat(60)}`
    const file = readHourlyCsv(text, 'x.csv', station, mapping('UTC'))
    const problems = codesOf(file)
    expect(problems).toHaveLength(21)
    expect(problems.slice(0, 3).map(([, at]) => at)).toEqual(['x.csv:2', 'x.csv:3', 'x.csv:4'])
    expect(file.ok ? '' : file.problems.at(-1)!.say).toBe('And 42 more like these.')
  })
  it('tells everything wrong with a mapping at once', () => {
    const file = readHourlyCsv(table('2026-07-01 06:00'), 'x.csv', station, {
      time: { column: 'when', marks: 'start', zone: 'Mars/Olympus' },
      columns: { wind: { column: 'W', unit: 'Beaufort' } },
    })
    expect(codesOf(file).map(([code]) => code)).toEqual([
      'weather/csv-column',
      'weather/csv-column',
      'weather/csv-unit',
      'weather/csv-column',
      'weather/csv-zone',
    ])
  })
  it('refuses an empty file', () =>
    expect(codesOf(readHourlyCsv('time,T\n', 'x.csv', station, mapping('UTC')))).toEqual([
      ['weather/empty', 'Plot'],
    ]))
})

describe('readEpw', () => {
  it('takes an hour from its line: it ends at its number, in standard time', () => {
    const file = readEpw(epw([epwHour(1, '21.5'), epwHour(2, '20.9', '999')]), 'a.epw')
    if (!file.ok) throw new Error(JSON.stringify(file.problems))
    const [first, second] = file.value.hours
    expect(new Date(first!.start * 1000).toISOString()).toBe('2026-06-30T23:00:00.000Z')
    expect(first).toMatchObject({
      air: 21.5,
      humidity: 0.4,
      pressure: 94000,
      global: 500,
      beam: 600,
      diffuse: 120,
      wind: 3.2,
      rain: 0.4,
    })
    expect(second!.rain).toBe(0)
  })
  it('tells damaged lines by number', () => {
    const file = readEpw(epw([epwHour(1, '21.5'), 'rubbish', epwHour(30, '20'), epwHour(3, '99.9')]), 'a.epw')
    expect(codesOf(file).map(([, at]) => at)).toEqual(['a.epw:10', 'a.epw:11', 'a.epw:12'])
  })
  it('refuses another file by its first line', () =>
    expect(codesOf(readEpw('PK\u0003\u0004', 'a.epw'))).toEqual([['weather/epw-head', 'a.epw:1']]))
  it('reads nothing out of a file cut off in its head', () =>
    expect(codesOf(readEpw(epw([]).slice(0, 120), 'a.epw'))).toEqual([['weather/empty', 'Nowhere']]))
})

describe('readTmy3', () => {
  it('names the columns it misses', () =>
    expect(codesOf(readTmy3('1,"N",X,-5,36,-80,273\nDate (MM/DD/YYYY),Hour\n', 't.csv'))).toEqual([
      ['weather/tmy3-columns', 't.csv:2'],
    ]))
  it('leaves rain in millimetres where it is', () => {
    const head = 'Date (MM/DD/YYYY),Time (HH:MM),Dry-bulb (C),Lprecip depth (mm)'
    const lines = Array.from(
      { length: 23 },
      (_, index) =>
        `07/01/1990,${String(index + 1).padStart(2, '0')}:00,20,${(0.254 * (index + 1)).toFixed(1)}`,
    )
    const file = readTmy3(['1,"N",X,-5,36,-80,273', head, ...lines].join('\n'), 't.csv')
    expect(file.ok && file.value.hours.map(hour => hour.rain).slice(0, 4)).toEqual([0.3, 0.5, 0.8, 1])
  })
})

describe('readWeather', () => {
  it('knows an EPW by its first line and says what it does not know', () => {
    expect(readWeather(epw([epwHour(1, '20')]), 'a').ok).toBe(true)
    expect(codesOf(readWeather('a,b\n1,2\n', 'a'))).toEqual([['weather/unknown-format', 'a:1']])
  })
})

describe('weatherUnits', () => {
  // hand: exact definitions; 1 inHg = 3386.389 Pa, 1 mph = 0.44704 m/s, 1 BTU/ft² = 3.15459 Wh/m².
  it.each([
    ['air', 'K', 300, 26.85],
    ['air', 'F', 212, 100],
    ['wind', 'mph', 10, 4.4704],
    ['wind', 'km/h', 36, 10],
    ['rain', 'in', 1, 25.4],
    ['pressure', 'inHg', 29.9213, 101325],
    ['global', 'kJ/m²', 3600, 1000],
    ['global', 'J/cm²', 360, 1000],
    ['global', 'BTU/ft²', 317, 1000],
  ] as const)('%s in %s', (quantity, unit, value, wanted) => {
    const read = readUnit(quantity, unit)!(value)
    expect(Math.abs(read - wanted)).toBeLessThanOrEqual(1e-4 * wanted)
  })
  it('gives every quantity the unit we use', () => {
    for (const units of Object.values(weatherUnits))
      expect(Object.values(units).some(way => way(7) === 7)).toBe(true)
  })
  it('has no unit by the name of an object’s own parts', () =>
    expect(readUnit('air', 'constructor')).toBeUndefined())
})
