import type { Job } from '../job/index.js'
import type { Limit } from '../limit/index.js'
import type { Celsius, Instant, Seconds } from '../quantity/index.js'
import { CIVIL_DEGREES } from './daylight.js'
import { evaporationPerHour, windAtHeight } from './evaporation.js'
import { wbgtOutdoors } from './heat-stress.js'
import { localClocks } from './local-clocks.js'
import {
  chilledWater,
  iceShareMost,
  nozzleLine,
  type Supply,
  type SupplyHour,
  sunOnCylinder,
} from './mix-temperature.js'
import type { PrintHour, WeatherHour } from './site-hour.js'
import { hourAngle, type SunOfDay, sunTrack } from './sun.js'

/** The parts of a job that decide an hour. A whole `Job` will do. */
export type PrintConditions = Pick<Job, 'site' | 'crew' | 'batching' | 'rules' | 'mix' | 'print'>

/** What all hours have in common, worked out once. */
interface Standing {
  readonly conditions: PrintConditions
  readonly supply: Supply
  readonly chilled?: { readonly water: Celsius; readonly ice: number }
  readonly sinLatitude: number
  readonly cosLatitude: number
  readonly sunAt: (at: Instant) => SunOfDay
}

const SIN_CIVIL = Math.sin((CIVIL_DEGREES * Math.PI) / 180)

/**
 * What each hour means for printing, with every limit and its margin.
 *
 * A limit's demand is what the hour brings or the rule asks for, its capacity what may be or what there is; the hour is
 * open when no demand exceeds its capacity. For the limits from below (cold mix, cold air, daylight) the demand is
 * therefore the least the rule asks for and the capacity what the hour offers.
 *
 * The dry material follows the mean air of the last 24 hours, the job's silo gain above it. Wherever the job has a chiller
 * or ice, they are at work in the hours that need them. Working days and days off are the calendar's matter, not the hour's.
 */
export function printHours(conditions: PrintConditions, hours: readonly WeatherHour[]): readonly PrintHour[] {
  const standing = standingOf(conditions)
  const dry = trailingMeans(hours, conditions.batching.siloGain)
  const clocks = localClocks(hours, conditions.site.timeZone)
  return hours.map((hour, index) => printHour(standing, hour, dry[index]!, clocks[index]!))
}

/** Room left under a limit, in its unit; negative when it bites. */
export const limitMargin = (limit: Limit): number => limit.capacity - limit.demand

/** The limits that close an hour. */
export const closedBy = (hour: PrintHour): readonly Limit[] =>
  hour.limits.filter(limit => limit.demand > limit.capacity)

function standingOf(conditions: PrintConditions): Standing {
  const { batching, mix, print, site } = conditions
  const { beadWidth, layerHeight } = print
  const area = (beadWidth - layerHeight) * layerHeight + (Math.PI / 4) * layerHeight ** 2
  const supply = { batching, mix, flow: area * print.speed }
  const ice = iceShareMost(batching, mix)
  const cold = batching.chiller !== undefined || ice > 0
  const latitude = (site.latitude * Math.PI) / 180
  return {
    conditions,
    supply,
    ...(cold ? { chilled: { water: chilledWater(supply), ice } } : {}),
    sinLatitude: Math.sin(latitude),
    cosLatitude: Math.cos(latitude),
    sunAt: sunTrack(),
  }
}

function printHour(standing: Standing, hour: WeatherHour, dry: Celsius, clock: Seconds): PrintHour {
  const { rules, batching } = standing.conditions
  const sine = sineOfSun(standing, hour)
  const around = { dry, air: hour.air, wind: windAtHeight(hour.wind), cylinderSun: sunOnCylinder(hour) }
  const line = nozzleLine(standing.supply, around, 0)
  const tap = line.rest + line.slope * batching.waterTemperature
  const coldest = standing.chilled ? coldestOf(standing, around) : tap
  // Cooled only as far as the limit asks: cold water is dear.
  const inUse = Math.max(coldest, Math.min(tap, rules.mixTemperatureMost.value))
  const evaporation = evaporationPerHour({ air: hour.air, humidity: hour.humidity, wind: around.wind }, inUse)
  const wbgt = crewWbgt(hour, sine)
  const limits = limitsOf(standing.conditions, hour, {
    tap,
    coldest,
    evaporation,
    wbgt,
    light: sine > SIN_CIVIL ? 1 : 0,
    permittedMinutes: permittedMinutes(standing.conditions.crew, clock),
  })
  const waterNeeded = (rules.mixTemperatureMost.value - line.rest) / line.slope
  const sunAltitude = Math.asin(sine)
  const open = allHold(limits)
  return standing.chilled
    ? {
        start: hour.start,
        weather: hour,
        mixTemperature: tap,
        mixTemperatureChilled: coldest,
        waterNeeded,
        evaporation,
        wbgt,
        sunAltitude,
        limits,
        open,
      }
    : {
        start: hour.start,
        weather: hour,
        mixTemperature: tap,
        waterNeeded,
        evaporation,
        wbgt,
        sunAltitude,
        limits,
        open,
      }
}

function allHold(limits: readonly Limit[]): boolean {
  for (const limit of limits) if (limit.demand > limit.capacity) return false
  return true
}

function coldestOf(standing: Standing, around: SupplyHour): Celsius {
  const { water, ice } = standing.chilled!
  const line = nozzleLine(standing.supply, around, ice)
  return line.rest + line.slope * water
}

function sineOfSun({ conditions, sinLatitude, cosLatitude, sunAt }: Standing, hour: WeatherHour): number {
  const middle = hour.start + 1800
  const sun = sunAt(middle)
  const H = hourAngle(middle, conditions.site.longitude, sun.equationOfTimeMinutes)
  return Math.max(
    -1,
    Math.min(1, sinLatitude * sun.sinDeclination + cosLatitude * sun.cosDeclination * Math.cos(H)),
  )
}

function crewWbgt(hour: WeatherHour, sinAltitude: number): Celsius {
  const beamShare = hour.global > 0 ? Math.max(0, 1 - hour.diffuse / hour.global) : 0
  return wbgtOutdoors({
    air: hour.air,
    humidity: hour.humidity,
    pressure: hour.pressure,
    wind: windAtHeight(hour.wind, 2),
    global: hour.global,
    beamShare: Math.min(1, beamShare),
    sinAltitude,
  })
}

interface HourValues {
  readonly tap: Celsius
  readonly coldest: Celsius
  readonly evaporation: number
  readonly wbgt: Celsius
  readonly light: 0 | 1
  readonly permittedMinutes: number
}

function limitsOf({ rules }: PrintConditions, hour: WeatherHour, values: HourValues): readonly Limit[] {
  const r = rules
  return [
    {
      kind: 'mix-hot',
      demand: values.coldest,
      capacity: r.mixTemperatureMost.value,
      unit: '°C',
      source: r.mixTemperatureMost.source,
    },
    {
      kind: 'mix-cold',
      demand: r.mixTemperatureLeast.value,
      capacity: values.tap,
      unit: '°C',
      source: r.mixTemperatureLeast.source,
    },
    {
      kind: 'air-cold',
      demand: r.airTemperatureLeast.value,
      capacity: hour.air,
      unit: '°C',
      source: r.airTemperatureLeast.source,
    },
    {
      kind: 'evaporation',
      demand: values.evaporation,
      capacity: r.evaporationMost.value,
      unit: 'kg/m²h',
      source: r.evaporationMost.source,
    },
    { kind: 'wind', demand: hour.wind, capacity: r.windMost.value, unit: 'm/s', source: r.windMost.source },
    { kind: 'gust', demand: hour.gust, capacity: r.gustMost.value, unit: 'm/s', source: r.gustMost.source },
    { kind: 'rain', demand: hour.rain, capacity: r.rainMost.value, unit: 'mm/h', source: r.rainMost.source },
    {
      kind: 'crew-heat',
      demand: values.wbgt,
      capacity: r.wbgtMost.value,
      unit: '°C',
      source: r.wbgtMost.source,
    },
    {
      kind: 'daylight',
      demand: r.daylightNeeded.value,
      capacity: values.light,
      unit: '',
      source: r.daylightNeeded.source,
    },
    { kind: 'permitted-hours', demand: 1, capacity: values.permittedMinutes, unit: 'min', source: 'the job' },
  ]
}

/** Minutes of the hour from this local clock time that lie between the crew's day start and end, across midnight if need be. */
function permittedMinutes(crew: PrintConditions['crew'], clock: Seconds): number {
  const overlap = (from: Seconds, until: Seconds) =>
    Math.max(0, Math.min(until, clock + 3600) - Math.max(from, clock)) / 60
  const end = crew.dayEnd > crew.dayStart ? crew.dayEnd : crew.dayEnd + 86400
  return Math.min(
    60,
    overlap(crew.dayStart, end) +
      overlap(crew.dayStart - 86400, end - 86400) +
      overlap(crew.dayStart + 86400, end + 86400),
  )
}

/** Mean air of the 24 hours before and with each hour, plus a gain; the first day uses its own mean. */
function trailingMeans(hours: readonly WeatherHour[], gain: Celsius): Float64Array {
  const means = new Float64Array(hours.length)
  const first = Math.min(24, hours.length)
  let sum = 0
  for (let index = 0; index < first; index += 1) sum += hours[index]!.air
  for (let index = 0; index < hours.length; index += 1) {
    if (index >= 24) sum += hours[index]!.air - hours[index - 24]!.air
    means[index] = sum / first + gain
  }
  return means
}
