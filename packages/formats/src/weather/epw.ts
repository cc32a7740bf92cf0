import { failure, type Problem, type Result } from '@dawnlift/core/result'
import type { Observation } from '@dawnlift/core/weather'
import { csvRows, numberIn, type Row } from './csv-rows.js'
import { definedOnly, finishFile } from './finish-file.js'
import type { Station, WeatherFile } from './weather-file.js'

/** Columns of an EPW data line, counted from 0, and the code from which a value counts as missing. */
const columns = {
  air: [6, 99.9],
  dewPoint: [7, 99.9],
  humidity: [8, 999],
  pressure: [9, 999999],
  global: [13, 9999],
  beam: [14, 9999],
  diffuse: [15, 9999],
  wind: [21, 999],
  rain: [33, 999],
} as const

const HEAD_LINES = 8

/**
 * An EnergyPlus weather file: eight head lines, then one line per hour, hours 1 to 24 ending at their number, standard time.
 * Missing codes count as missing, not as values. Rain is mm; a depth of 999 is missing.
 *
 * @param name  for messages, e.g. the file's name
 */
export function readEpw(text: string, name: string): Result<WeatherFile> {
  const rows = csvRows(text, ',')
  const place = readPlace(rows[0], name)
  if ('problem' in place) return failure([place.problem])
  const data = rows.slice(HEAD_LINES)
  const problems: Problem[] = []
  const observations = data.flatMap(row => {
    const seen = readHour(row, place.utcOffset)
    if ('say' in seen) problems.push({ code: 'weather/epw-line', at: `${name}:${row.line}`, say: seen.say })
    return 'say' in seen ? [] : [seen]
  })
  return finishFile({ station: place.station, utcOffset: place.utcOffset, observations, problems }, 'history')
}

function readPlace(
  row: Row | undefined,
  name: string,
): { readonly station: Station; readonly utcOffset: number } | { readonly problem: Problem } {
  const [latitude, longitude, zone, elevation] = [6, 7, 8, 9].map(at => numberIn(row?.cells[at]))
  if (
    row?.cells[0]?.toUpperCase() !== 'LOCATION' ||
    latitude === undefined ||
    longitude === undefined ||
    zone === undefined ||
    elevation === undefined
  )
    return {
      problem: {
        code: 'weather/epw-head',
        at: `${name}:1`,
        say: 'The first line is not `LOCATION,city,state,country,source,WMO,latitude,longitude,hours from UTC,elevation`. Is this an EPW file?',
      },
    }
  const station = { name: row.cells[1] || name, latitude, longitude, elevation }
  return { station, utcOffset: zone * 3600 }
}

function readHour({ cells }: Row, utcOffset: number): Observation | { readonly say: string } {
  const [year, month, day, hour] = [0, 1, 2, 3].map(at => numberIn(cells[at]))
  if (
    year === undefined ||
    month === undefined ||
    day === undefined ||
    hour === undefined ||
    hour < 1 ||
    hour > 24
  )
    return {
      say: `A data line starts with year, month, day and hour 1–24; found “${cells.slice(0, 4).join(',')}”.`,
    }
  const value = (key: keyof typeof columns): number | undefined => {
    const [at, missing] = columns[key]
    const found = numberIn(cells[at])
    return found === undefined || found >= missing ? undefined : found
  }
  const air = value('air')
  if (air === undefined)
    return {
      say: `The air temperature is missing (“${cells[6] ?? ''}”); without it the hour cannot be used.`,
    }
  const humidity = value('humidity')
  return definedOnly({
    start: Date.UTC(year, month - 1, day, hour - 1) / 1000 - utcOffset,
    air,
    humidity: humidity === undefined ? undefined : Math.min(1, humidity / 100),
    dewPoint: value('dewPoint'),
    pressure: value('pressure'),
    // Some writers print the night as −0.00.
    global: notBelowZero(value('global')),
    beam: notBelowZero(value('beam')),
    diffuse: notBelowZero(value('diffuse')),
    wind: value('wind'),
    rain: value('rain'),
  })
}

const notBelowZero = (value: number | undefined): number | undefined =>
  value === undefined ? undefined : Math.max(0, value)
