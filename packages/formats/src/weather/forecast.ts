import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import {
  type CompletedHours,
  checkWeather,
  completeHours,
  type Observation,
  type WeatherHour,
} from '@dawnlift/core/weather'
import { curtail, definedOnly } from './finish-file.js'

/** A forecast as read, before its age is known. */
export interface ForecastHours {
  readonly hours: readonly WeatherHour[]
  readonly assumed: CompletedHours['assumed']
  readonly warnings: readonly Problem[]
}

/** What we ask the service for, in this order; its names, our units. */
export const forecastFields = {
  air: 'temperature_2m',
  humidity: 'relative_humidity_2m',
  pressure: 'surface_pressure',
  wind: 'wind_speed_10m',
  gust: 'wind_gusts_10m',
  rain: 'precipitation',
  global: 'shortwave_radiation',
  beam: 'direct_normal_irradiance',
  diffuse: 'diffuse_radiation',
} as const

type Field = keyof typeof forecastFields

/** Units the answer must be in, as the service spells them: we ask for them, and check that we got them. */
const expectedUnits: Readonly<Record<Field, readonly string[]>> = {
  air: ['°C'],
  humidity: ['%'],
  pressure: ['hPa'],
  wind: ['m/s'],
  gust: ['m/s'],
  rain: ['mm'],
  global: ['W/m²'],
  beam: ['W/m²'],
  diffuse: ['W/m²'],
}

interface Hourly {
  readonly time: readonly number[]
  readonly values: Readonly<Partial<Record<Field, readonly (number | null)[]>>>
}

/**
 * Plain parallel arrays of hourly values → hours.
 *
 * Air, humidity, pressure and wind are the service's values at the full hour: an hour's mean is the mean of its two ends. Rain, gusts and
 * radiation are of the hour before the stamp: an hour takes them from its end. So n stamps make n − 1 hours.
 */
export function readForecast(
  answer: unknown,
  site: { readonly latitude: number; readonly longitude: number; readonly elevation: number },
): Result<ForecastHours> {
  const hourly = hourlyOf(answer)
  if (!hourly.ok) return hourly
  const { time, values } = hourly.value
  const problems: Problem[] = []
  const observations = time.slice(0, -1).flatMap((start, index): Observation[] => {
    const at = (field: Field, step: 0 | 1) => values[field]?.[index + step] ?? undefined
    const mean = (field: Field) => {
      const [a, b] = [at(field, 0), at(field, 1)]
      return a === undefined || b === undefined ? undefined : (a + b) / 2
    }
    const air = mean('air')
    // The far end of a forecast is often null: those hours are simply not forecast.
    if (air === undefined || time[index + 1]! - start !== 3600) return []
    return [
      definedOnly({
        start,
        air,
        humidity: scaled(mean('humidity'), 0.01),
        dewPoint: undefined,
        pressure: scaled(mean('pressure'), 100),
        wind: mean('wind'),
        gust: at('gust', 1),
        rain: at('rain', 1),
        global: at('global', 1),
        beam: at('beam', 1),
        diffuse: at('diffuse', 1),
      }),
    ]
  })
  if (observations.length === 0)
    problems.push({
      code: 'forecast/empty',
      at: 'hourly',
      say: 'The forecast has no hour with an air temperature.',
    })
  if (problems.length > 0) return failure(curtail(problems))
  const { hours, assumed } = completeHours(observations, site, 'forecast')
  return success({ hours, assumed, warnings: checkWeather(hours, site) })
}

const scaled = (value: number | undefined, factor: number): number | undefined =>
  value === undefined ? undefined : value * factor

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function hourlyOf(answer: unknown): Result<Hourly> {
  const told = isRecord(answer) && answer.error === true ? String(answer.reason ?? '') : undefined
  if (told !== undefined)
    return failure([{ code: 'forecast/refused', at: 'reason', say: `The forecast service refused: ${told}` }])
  const hourly = isRecord(answer) ? answer.hourly : undefined
  if (!isRecord(hourly) || !Array.isArray(hourly.time))
    return failure([
      {
        code: 'forecast/shape',
        at: 'hourly.time',
        say: 'The answer has no `hourly.time`; it is no hourly forecast.',
      },
    ])
  const units = isRecord(answer) && isRecord(answer.hourly_units) ? answer.hourly_units : {}
  const time = hourly.time.map(momentOf)
  const problems = [
    ...(time.includes(Number.NaN)
      ? [
          {
            code: 'forecast/time',
            at: 'hourly.time',
            say: 'Times must be seconds since 1970 or ISO dates in UTC.',
          },
        ]
      : []),
    ...(Object.keys(forecastFields) as Field[]).flatMap(field =>
      fieldProblems(field, hourly, units, time.length),
    ),
  ]
  if (problems.length > 0) return failure(problems)
  const values = Object.fromEntries(
    (Object.keys(forecastFields) as Field[]).flatMap(field => {
      const list = hourly[forecastFields[field]]
      return Array.isArray(list) ? [[field, list as (number | null)[]]] : []
    }),
  )
  return success({ time, values })
}

const momentOf = (stamp: unknown): number =>
  typeof stamp === 'number' ? stamp : Date.parse(`${String(stamp).replace(/Z$/, '')}Z`) / 1000

function fieldProblems(
  field: Field,
  hourly: Readonly<Record<string, unknown>>,
  units: Readonly<Record<string, unknown>>,
  length: number,
): readonly Problem[] {
  const name = forecastFields[field]
  const list = hourly[name]
  const at = `hourly.${name}`
  if (list === undefined)
    return field === 'air'
      ? [{ code: 'forecast/field', at, say: `\`${name}\` is missing; without it there is no forecast.` }]
      : []
  if (!Array.isArray(list) || list.length !== length)
    return [
      {
        code: 'forecast/length',
        at,
        say: `\`${name}\` has ${Array.isArray(list) ? list.length : 'no'} values for ${length} times; all lists must be equally long.`,
      },
    ]
  if (list.some(value => value !== null && !Number.isFinite(value)))
    return [
      { code: 'forecast/value', at, say: `\`${name}\` holds something that is neither a number nor null.` },
    ]
  const unit = units[name]
  if (unit !== undefined && !expectedUnits[field].includes(String(unit)))
    return [
      {
        code: 'forecast/unit',
        at: `hourly_units.${name}`,
        say: `\`${name}\` is in ${String(unit)}; it must be in ${expectedUnits[field].join(' or ')}.`,
      },
    ]
  return []
}
