import type { Batching, Calendar, Rules, RuleValue } from '@dawnlift/core/job'
import type { ClimateNormals, MonthNormals } from '@dawnlift/core/weather'
import { type Default, type DefaultPath, defaultTable } from './default-table.js'
import type { JobDocument } from './job-schema.js'
import type { Ledger } from './ledger.js'
import { buildMoment } from './moment.js'

/** Where the job's weather comes from. */
export type JobWeather =
  | { readonly kind: 'normals'; readonly normals: ClimateNormals; readonly forecast?: string }
  | {
      readonly kind: 'file'
      readonly file: string
      readonly format: 'csv' | 'epw' | 'tmy3'
      /** For `csv`: column and unit of each reading. */
      readonly columns: Readonly<Record<string, string>>
      readonly source: string
      readonly forecast?: string
    }

export function buildWeather(document: JobDocument, ledger: Ledger): JobWeather | undefined {
  const { normals, file, format, columns, source, forecast } = document.weather
  const ahead = forecast === undefined ? {} : { forecast }
  if ((normals === undefined) === (file === undefined))
    return ledger.wrong(
      'job/weather',
      ['weather'],
      'The weather is given either by “normals” (twelve months) or by a “file”; write one of the two.',
    )
  if (normals) {
    const months = normals.flatMap((month, index) => monthNormals(month, index, ledger) ?? [])
    return {
      kind: 'normals',
      normals: { place: document.site.name, source: source ?? 'the job', months },
      ...ahead,
    }
  }
  const kind = format ?? formatOf(file ?? '')
  if (!kind)
    return ledger.wrong(
      'job/weather',
      ['weather', 'format'],
      `The kind of weather file cannot be told from “${file}”; write format: csv, epw or tmy3.`,
    )
  return {
    kind: 'file',
    file: file ?? '',
    format: kind,
    columns: columns ?? {},
    source: source ?? file ?? '',
    ...ahead,
  }
}

const formatOf = (file: string) =>
  /\.epw$/i.test(file) ? 'epw' : /tmy3?\.csv$/i.test(file) ? 'tmy3' : /\.csv$/i.test(file) ? 'csv' : undefined

type Month = NonNullable<JobDocument['weather']['normals']>[number]

function monthNormals(month: Month, index: number, ledger: Ledger): MonthNormals | undefined {
  const at = ['weather', 'normals', index]
  if (month.low > month.high)
    return ledger.wrong(
      'job/month',
      [...at, 'low'],
      `The mean low ${ledger.said(month.low, 'temperature')} is above the mean high ${ledger.said(month.high, 'temperature')}; swap them.`,
    )
  if (month.dewPoint > month.high)
    return ledger.wrong(
      'job/month',
      [...at, 'dewPoint'],
      `The dew point ${ledger.said(month.dewPoint, 'temperature')} is above the mean high ${ledger.said(month.high, 'temperature')}, which no air can have; correct one of the two.`,
    )
  if ((month.sun === undefined) === (month.cloud === undefined))
    return ledger.wrong(
      'job/month',
      at,
      'The sky of a month is given by “sun” (MJ/m²/d) or by “cloud” (a share); write one of the two.',
    )
  return {
    airMost: month.high,
    airLeast: month.low,
    dewPoint: month.dewPoint,
    wind: month.wind,
    rainDays: month.rainDays,
    rainMm: month.rain * 1000,
    sky:
      month.sun === undefined
        ? { kind: 'cloud', cover: month.cloud ?? 0 }
        : { kind: 'global', megajoulesPerDay: month.sun / 1e6 },
  }
}

/** First day and, if the document says so, the moment planning looks from. */
export function buildCalendar(document: JobDocument, ledger: Ledger): Calendar {
  const { firstDay, now } = document.calendar
  if (now === undefined) return { firstDay }
  const instant = buildMoment(now, document.site.timeZone, ['calendar', 'now'], ledger)
  return instant === undefined ? { firstDay } : { firstDay, now: instant }
}

/** How the batch is made, with what the silo holds and when it is filled if the document says so. */
export function buildBatching(document: JobDocument, ledger: Ledger): Batching {
  const { chiller, silo, siloGain, ...batching } = document.batching
  const loads = silo?.loads.flatMap(({ at, mass }, index) => {
    const moment = buildMoment(at, document.site.timeZone, ['batching', 'silo', 'loads', index, 'at'], ledger)
    return moment === undefined ? [] : [{ at: moment, mass }]
  })
  return {
    ...batching,
    ...(siloGain === undefined ? {} : { siloGain }),
    ...(chiller ? { chiller } : {}),
    ...(silo && loads ? { silo: { stock: silo.stock, loads } } : {}),
  }
}

/** Each rule with where it comes from: the job, or the source of its default. */
export function buildRules(rules: JobDocument['rules'], raw: Readonly<Record<string, unknown>>): Rules {
  const rule = (key: keyof Rules, value: number): RuleValue => {
    const path: DefaultPath = `rules.${key}`
    const row: Default = defaultTable[path]
    return { value, source: Object.hasOwn(raw, key) ? 'the job' : row.source }
  }
  return {
    liftHeight: rule('liftHeight', rules.liftHeight),
    overnightCure: rule('overnightCure', rules.overnightCure),
    mixTemperatureMost: rule('mixTemperatureMost', rules.mixTemperatureMost),
    mixTemperatureLeast: rule('mixTemperatureLeast', rules.mixTemperatureLeast),
    airTemperatureLeast: rule('airTemperatureLeast', rules.airTemperatureLeast),
    evaporationMost: rule('evaporationMost', rules.evaporationMost),
    windMost: rule('windMost', rules.windMost),
    gustMost: rule('gustMost', rules.gustMost),
    rainMost: rule('rainMost', rules.rainMost),
    wbgtMost: rule('wbgtMost', rules.wbgtMost),
    daylightNeeded: rule('daylightNeeded', rules.daylightNeeded ? 1 : 0),
    standSafety: rule('standSafety', rules.standSafety),
    imperfection: rule('imperfection', rules.imperfection),
    dryingMost: rule('dryingMost', rules.dryingMost),
    restMost: rule('restMost', rules.restMost),
    layerTimeMost: rule('layerTimeMost', rules.layerTimeMost),
  }
}
