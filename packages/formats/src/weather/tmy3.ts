import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import type { Observation } from '@dawnlift/core/weather'
import { csvRows, numberIn, type Row } from './csv-rows.js'
import { definedOnly, finishFile } from './finish-file.js'
import type { Station, WeatherFile } from './weather-file.js'

/** Head of each column we read, and what one of its units is in ours. */
const heads = {
  global: ['GHI (W/m^2)', 1],
  beam: ['DNI (W/m^2)', 1],
  diffuse: ['DHI (W/m^2)', 1],
  air: ['Dry-bulb (C)', 1],
  dewPoint: ['Dew-point (C)', 1],
  humidity: ['RHum (%)', 0.01],
  pressure: ['Pressure (mbar)', 100],
  wind: ['Wspd (m/s)', 1],
  rain: ['Lprecip depth (mm)', 1],
} as const

/** Values at or below this are the format's sign for missing. */
const MISSING = -9000

/**
 * A TMY3 file: a station line, a line of heads, then hours 01:00 to 24:00 that end at their stamp, in standard time. Its months come
 * from different years; the hours are re-dated to one.
 */
export function readTmy3(text: string, name: string): Result<WeatherFile> {
  const [first, head, ...data] = csvRows(text, ',')
  const place = stationOf(first)
  const at = new Map(head?.cells.map((cell, index) => [cell, index]))
  const absent = ['Date (MM/DD/YYYY)', 'Time (HH:MM)', heads.air[0]].filter(column => !at.has(column))
  const problems: Problem[] = []
  if (!place)
    problems.push({
      code: 'weather/tmy3-head',
      at: `${name}:1`,
      say: 'The first line is not `number,"name",state,hours from UTC,latitude,longitude,elevation`. Is this a TMY3 file?',
    })
  if (absent.length > 0)
    problems.push({
      code: 'weather/tmy3-columns',
      at: `${name}:2`,
      say: `The second line lacks the columns ${absent.join(', ')}.`,
    })
  if (!place || problems.length > 0) return failure(problems)
  const observations = data.flatMap(row => {
    const seen = readHour(row, at, place.utcOffset)
    if ('say' in seen) problems.push({ code: 'weather/tmy3-line', at: `${name}:${row.line}`, say: seen.say })
    return 'say' in seen ? [] : [seen]
  })
  const tenths = rainInTenths(observations)
  const read = finishFile(
    { ...place, observations: tenths ? observations.map(inMillimetres) : observations, problems },
    'history',
  )
  if (!read.ok || !tenths) return read
  return success({ ...read.value, warnings: [...read.value.warnings, tenthsWarning(name)] })
}

function stationOf(
  row: Row | undefined,
): { readonly station: Station; readonly utcOffset: number } | undefined {
  const [zone, latitude, longitude, elevation] = [3, 4, 5, 6].map(at => numberIn(row?.cells[at]))
  if (zone === undefined || latitude === undefined || longitude === undefined || elevation === undefined)
    return undefined
  return { station: { name: row!.cells[1] ?? '', latitude, longitude, elevation }, utcOffset: zone * 3600 }
}

function readHour(
  { cells }: Row,
  at: ReadonlyMap<string, number>,
  utcOffset: number,
): Observation | { readonly say: string } {
  const date = /^(\d\d)\/(\d\d)\/(\d{4})$/.exec(cells[0] ?? '')
  const time = /^(\d\d):00$/.exec(cells[1] ?? '')
  if (!date || !time)
    return { say: `A line starts with MM/DD/YYYY and HH:00; found “${cells.slice(0, 2).join(' ')}”.` }
  const value = (key: keyof typeof heads): number | undefined => {
    const column = at.get(heads[key][0])
    const found = column === undefined ? undefined : numberIn(cells[column])
    return found === undefined || found <= MISSING ? undefined : found * heads[key][1]
  }
  const air = value('air')
  if (air === undefined)
    return { say: 'The dry-bulb temperature is missing; without it the hour cannot be used.' }
  const hour = Number(time[1]) - 1
  return definedOnly({
    start: Date.UTC(Number(date[3]), Number(date[1]) - 1, Number(date[2]), hour) / 1000 - utcOffset,
    air,
    dewPoint: value('dewPoint'),
    humidity: value('humidity'),
    pressure: value('pressure'),
    global: value('global'),
    beam: value('beam'),
    diffuse: value('diffuse'),
    wind: value('wind'),
    rain: value('rain'),
  })
}

/**
 * Whether the rain column is in tenths of a millimetre although its head says mm, as some published files have it.
 *
 * Their depths are hundredths of an inch turned into whole tenths (3, 5, 8, 10, 13, …). True whole millimetres would
 * have 1, 2, 4 and 7 as often, and the year of such a file would have metres of rain.
 */
function rainInTenths(observations: readonly Observation[]): boolean {
  const depths = observations.flatMap(({ rain }) => (rain !== undefined && rain > 0 ? [rain] : []))
  const ofInches = (depth: number) => Math.round(Math.round(depth / 2.54) * 2.54) === depth
  return (
    depths.length >= 20 &&
    depths.every(Number.isInteger) &&
    depths.filter(ofInches).length > 0.9 * depths.length
  )
}

const inMillimetres = (seen: Observation): Observation =>
  seen.rain === undefined ? seen : { ...seen, rain: seen.rain / 10 }

const tenthsWarning = (name: string): Problem => ({
  code: 'weather/tmy3-rain-tenths',
  at: `${name}:2`,
  say: 'The rain column says mm, but its numbers are tenths of a millimetre (hundredths of an inch, rounded); they were divided by ten.',
})
