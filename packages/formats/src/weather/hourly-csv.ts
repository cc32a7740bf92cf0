import { instantAt, isTimeZone, localTime } from '@dawnlift/core/clock'
import { failure, type Problem, type Result } from '@dawnlift/core/result'
import type { HourSource, Observation } from '@dawnlift/core/weather'
import { csvRows, numberIn, type Row, separatorOf } from './csv-rows.js'
import { definedOnly, finishFile } from './finish-file.js'
import type { Station, WeatherFile } from './weather-file.js'
import { readUnit, type WeatherQuantity, weatherUnits } from './weather-units.js'

/** Which column is what, in which unit. */
export interface HourlyMapping {
  readonly time: {
    readonly column: string
    /** Whether a stamp marks the start or the end of its hour. */
    readonly marks: 'start' | 'end'
    /** `UTC`, an IANA zone, or a fixed offset like `+05:30`. Stamps that carry their own offset keep it. */
    readonly zone: string
    /** How dates are written; `iso` by default. */
    readonly order?: 'iso' | 'day-first' | 'month-first'
  }
  readonly columns: Readonly<
    Partial<Record<WeatherQuantity, { readonly column: string; readonly unit: string }>>
  >
  /** Written where a value is missing, beside the empty cell. */
  readonly missing?: readonly string[]
  readonly decimalComma?: boolean
}

/**
 * Any table of hours with one head line, by a mapping. Stamps in a zone with daylight saving are followed through both its jumps:
 * the hour that autumn shows twice is first summer, then standard time.
 */
export function readHourlyCsv(
  text: string,
  name: string,
  station: Station,
  mapping: HourlyMapping,
  source: HourSource = 'history',
): Result<WeatherFile> {
  const separator = separatorOf(text.slice(0, text.search(/\r|\n|$/)))
  const [head, ...data] = csvRows(text, separator)
  const at = new Map(head?.cells.map((cell, index) => [cell, index]))
  const setUp = mappingProblems(mapping, at, name)
  if (setUp.length > 0) return failure(setUp)
  const problems: Problem[] = []
  let last = Number.NEGATIVE_INFINITY
  const observations = data.flatMap(row => {
    const seen = readHour(row, mapping, at, last)
    if ('say' in seen) {
      problems.push({ code: 'weather/csv-line', at: `${name}:${row.line}`, say: seen.say })
      return []
    }
    last = seen.start
    return [seen]
  })
  return finishFile({ station, utcOffset: 0, observations, problems }, source)
}

function mappingProblems(
  mapping: HourlyMapping,
  at: ReadonlyMap<string, number>,
  name: string,
): readonly Problem[] {
  const heads = [...at.keys()].join(', ')
  const wanted = [mapping.time.column, ...Object.values(mapping.columns).map(({ column }) => column)]
  const absent = wanted
    .filter(column => !at.has(column))
    .map(column => ({
      code: 'weather/csv-column',
      at: `${name}:1`,
      say: `There is no column “${column}”; the file has ${heads || 'no head line'}. Name one of its columns under “columns”.`,
    }))
  const strange = Object.entries(mapping.columns)
    .filter(([quantity, { unit }]) => readUnit(quantity as WeatherQuantity, unit) === undefined)
    .map(([quantity, { unit }]) => ({
      code: 'weather/csv-unit',
      at: `mapping.columns.${quantity}.unit`,
      say: `“${unit}” is not a unit of ${quantity}; use ${Object.keys(weatherUnits[quantity as WeatherQuantity]).join(', ')}.`,
    }))
  const { zone } = mapping.time
  const known = /^[+-]\d\d:\d\d$/.test(zone) || isTimeZone(zone)
  return [
    ...absent,
    ...strange,
    ...(mapping.columns.air
      ? []
      : [
          {
            code: 'weather/csv-column',
            at: 'mapping.columns',
            say: 'No column is mapped to `air`; the air temperature is indispensable.',
          },
        ]),
    ...(known
      ? []
      : [
          {
            code: 'weather/csv-zone',
            at: 'mapping.time.zone',
            say: `“${zone}” is neither UTC, an IANA time zone nor an offset like +05:30.`,
          },
        ]),
  ]
}

function readHour(
  { cells }: Row,
  mapping: HourlyMapping,
  at: ReadonlyMap<string, number>,
  last: number,
): Observation | { readonly say: string } {
  const stampText = cells[at.get(mapping.time.column)!] ?? ''
  const stamp = readStamp(stampText, mapping.time, last)
  if (stamp === undefined)
    return { say: `“${stampText}” is not a date and time (${mapping.time.order ?? 'iso'}).` }
  const values: Partial<Record<WeatherQuantity, number>> = {}
  for (const [key, { column, unit }] of Object.entries(mapping.columns)) {
    const text = cells[at.get(column)!] ?? ''
    if (text === '' || mapping.missing?.includes(text)) continue
    const found = numberIn(text, mapping.decimalComma)
    if (found === undefined) return { say: `“${text}” in column “${column}” is not a number.` }
    values[key as WeatherQuantity] = readUnit(key as WeatherQuantity, unit)!(found)
  }
  if (values.air === undefined)
    return { say: 'The air temperature is missing; without it the hour cannot be used.' }
  return definedOnly({
    dewPoint: undefined,
    humidity: undefined,
    wind: undefined,
    gust: undefined,
    rain: undefined,
    global: undefined,
    beam: undefined,
    diffuse: undefined,
    pressure: undefined,
    ...values,
    air: values.air,
    start: mapping.time.marks === 'end' ? stamp - 3600 : stamp,
  })
}

/** The moment a stamp means, not before the last one if the clock shows it twice. */
function readStamp(text: string, time: HourlyMapping['time'], last: number): number | undefined {
  const own = /(Z|[+-]\d\d:?\d\d)$/.exec(text)
  const parts = clockParts(
    own && /[T ]\d\d:/.test(text) ? text.slice(0, own.index) : text,
    time.order ?? 'iso',
  )
  if (!parts) return undefined
  const { date, clock } = parts
  const offset = own && /[T ]\d\d:/.test(text) ? offsetOf(own[1]!) : offsetOf(time.zone)
  if (offset !== undefined) return Date.parse(`${date}T00:00:00Z`) / 1000 + clock - offset
  const first = instantAt(date, clock, time.zone)
  const marked = time.marks === 'end' ? first - 3600 : first
  if (marked > last) return first
  const second = localTime(first + 3600, time.zone)
  return second.date === date && second.clock === clock ? first + 3600 : first
}

function offsetOf(zone: string): number | undefined {
  if (zone === 'Z' || zone === 'UTC') return 0
  const found = /^([+-])(\d\d):?(\d\d)$/.exec(zone)
  return found ? (found[1] === '-' ? -1 : 1) * (Number(found[2]) * 3600 + Number(found[3]) * 60) : undefined
}

function clockParts(
  text: string,
  order: 'iso' | 'day-first' | 'month-first',
): { date: string; clock: number } | undefined {
  const found = /^(\d+)[-/.](\d+)[-/.](\d+)[T ]+(\d{1,2}):(\d\d)(?::(\d\d)(?:\.\d+)?)?$/.exec(text.trim())
  if (!found) return undefined
  const numbers = found.slice(1, 4) as [string, string, string]
  const [year, month, day] =
    order === 'iso'
      ? numbers
      : order === 'day-first'
        ? [numbers[2], numbers[1], numbers[0]]
        : [numbers[2], numbers[0], numbers[1]]
  const date = `${year.padStart(4, '0')}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`
  const back = new Date(`${date}T00:00:00Z`)
  // 31 April would roll over to May: not a date.
  if (Number.isNaN(back.getTime()) || back.toISOString().slice(0, 10) !== date) return undefined
  const clock = Number(found[4]) * 3600 + Number(found[5]) * 60 + Number(found[6] ?? 0)
  return clock > 86400 ? undefined : { date, clock }
}
