import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import { checkWeather, completeHours, type HourSource, type Observation } from '@dawnlift/core/weather'
import { type Station, typicalYear, type WeatherFile } from './weather-file.js'

/** What a reader found before anything is filled in. */
export interface Reading {
  readonly station: Station
  readonly utcOffset: number
  readonly observations: readonly Observation[]
  readonly problems: readonly Problem[]
}

/** Problems shown of one kind; the rest are counted. */
const SHOWN = 20

/** Completes the hours, looks them over, and re-dates a year put together from several. */
export function finishFile(reading: Reading, source: HourSource): Result<WeatherFile> {
  const { station, utcOffset, observations, problems } = reading
  if (problems.length > 0) return failure(curtail(problems))
  if (observations.length === 0)
    return failure([
      { code: 'weather/empty', at: station.name, say: 'The file has no hours; give at least one.' },
    ])
  const typical = yearsOfMonths(observations, utcOffset)
  const dated = typical ? redate(observations, utcOffset) : observations
  const { hours, assumed } = completeHours(dated, station, source)
  return success({
    station,
    utcOffset,
    hours,
    assumed,
    warnings: checkWeather(hours, station),
    ...(typical ? { yearsOfMonths: typical } : {}),
  })
}

/** At most twenty problems and a last one that counts the others. */
export function curtail(problems: readonly Problem[]): readonly Problem[] {
  if (problems.length <= SHOWN) return problems
  const more = problems.length - SHOWN
  return [
    ...problems.slice(0, SHOWN),
    { code: problems[SHOWN]!.code, at: problems[SHOWN]!.at, say: `And ${more} more like these.` },
  ]
}

/** The years of the twelve months, if they run backwards anywhere: then no real year is meant. */
function yearsOfMonths(
  observations: readonly Observation[],
  utcOffset: number,
): readonly number[] | undefined {
  const backwards = observations.some(
    (seen, index) => index > 0 && seen.start < observations[index - 1]!.start,
  )
  const leaps = observations.some(
    (seen, index) => index > 0 && seen.start - observations[index - 1]!.start > 40 * 86400,
  )
  if (!backwards && !leaps) return undefined
  const years: number[] = []
  for (const { start } of observations) {
    const date = new Date((start + utcOffset) * 1000)
    years[date.getUTCMonth()] ??= date.getUTCFullYear()
  }
  return years
}

function redate(observations: readonly Observation[], utcOffset: number): readonly Observation[] {
  return observations.map(seen => {
    const date = new Date((seen.start + utcOffset) * 1000)
    date.setUTCFullYear(typicalYear)
    return { ...seen, start: date.getTime() / 1000 - utcOffset }
  })
}

/** An observation without the keys that have no value. */
export function definedOnly(
  seen: { readonly [Key in keyof Observation]: Observation[Key] | undefined } & Pick<
    Observation,
    'start' | 'air'
  >,
): Observation {
  return Object.fromEntries(
    Object.entries(seen).filter(([, value]) => value !== undefined),
  ) as unknown as Observation
}
