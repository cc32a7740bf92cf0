import type { PermittedHours, Rules, RuleValue } from '../job/index.js'
import type { Limit, LimitKind } from '../limit/index.js'
import type { Celsius, Seconds } from '../quantity/index.js'
import type { WeatherHour } from './site-hour.js'

/** What an hour makes of the job. */
export interface HourValues {
  readonly tap: Celsius
  readonly evaporation: number
  readonly wbgt: Celsius
  readonly light: 0 | 1
}

/** Every limit of one hour, in the order a lead asks for them. */
export function hourLimits(rules: Rules): (hour: WeatherHour, values: HourValues) => Limit[] {
  // What most hours have alike is made once: a season has few rainy hours, and each is light or dark.
  const dry = limit('rain', 0, rules.rainMost, 'mm/h')
  const daylight = [0, 1].map(light => floor('daylight', light, rules.daylightNeeded, ''))
  return (hour, values) => [
    limit('mix-hot', values.tap, rules.mixTemperatureMost, '°C'),
    floor('mix-cold', values.tap, rules.mixTemperatureLeast, '°C'),
    floor('air-cold', hour.air, rules.airTemperatureLeast, '°C'),
    limit('evaporation', values.evaporation, rules.evaporationMost, 'kg/m²h'),
    limit('wind', hour.wind, rules.windMost, 'm/s'),
    limit('gust', hour.gust, rules.gustMost, 'm/s'),
    hour.rain === 0 ? dry : limit('rain', hour.rain, rules.rainMost, 'mm/h'),
    limit('crew-heat', values.wbgt, rules.wbgtMost, '°C'),
    daylight[values.light]!,
  ]
}

const limit = (kind: LimitKind, demand: number, rule: RuleValue, unit: string): Limit => ({
  kind,
  demand,
  capacity: rule.value,
  unit,
  source: rule.source,
})

/** A rule from below: what it asks for at least is the demand, what the hour brings the capacity (see `isBeyond`). */
const floor = (kind: LimitKind, brings: number, rule: RuleValue, unit: string): Limit => ({
  kind,
  demand: rule.value,
  capacity: brings,
  unit,
  source: rule.source,
})

/** The whole hour has to be permitted; how much of it is, the lead sees in the capacity. */
export const permittedLimit = (minutes: number, source: string): Limit => ({
  kind: 'permitted-hours',
  demand: 60,
  capacity: minutes,
  unit: 'min',
  source,
})

/** Minutes of an hour that are permitted, from the seconds after local midnight at which it begins. */
export function permittedMinutes({ from, until }: PermittedHours, clock: Seconds): number {
  const end = until > from ? until : until + 86400
  const overlap = (shift: Seconds) =>
    Math.max(0, Math.min(end + shift, clock + 3600) - Math.max(from + shift, clock)) / 60
  return Math.min(60, overlap(0) + overlap(-86400) + overlap(86400))
}
