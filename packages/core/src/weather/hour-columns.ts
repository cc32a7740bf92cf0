import type { Job, PermittedHours, Rules } from '../job/index.js'
import type { Celsius, Instant } from '../quantity/index.js'
import { assert } from '../result/index.js'
import { CIVIL_DEGREES } from './daylight.js'
import { evaporationPerHour, windAtHeight } from './evaporation.js'
import { wbgtOutdoors } from './heat-stress.js'
import { permittedMinutes } from './hour-limits.js'
import { localClocks } from './local-clocks.js'
import {
  chilledWater,
  iceShareMost,
  nozzleLine,
  type Supply,
  type SupplyHour,
  sunOnCylinder,
} from './mix-temperature.js'
import { siloTemperatures, underShade } from './silo.js'
import type { WeatherHour } from './site-hour.js'
import { hourAngle, type SunOfDay, sunTrack } from './sun.js'

/** The parts of a job that decide an hour. A whole `Job` will do. */
export type PrintConditions = Pick<Job, 'site' | 'crew' | 'batching' | 'rules' | 'mix' | 'print'>

/**
 * What hours mean for printing, a column a figure: row i is `weather[i]`. Plain data; many years fit in where an object an hour would
 * not. `printHourAt` makes the object of one hour, with its limits, from them.
 */
export interface HourColumns {
  readonly weather: readonly WeatherHour[]
  readonly rules: Rules
  readonly permitted?: PermittedHours
  /** Mix at the nozzle with tap water, and the coldest that chiller and ice can make [°C]. */
  readonly tap: Float64Array
  readonly chilled?: Float64Array
  /** Water at which the mix would just meet its limit [°C]. */
  readonly waterNeeded: Float64Array
  /** kg/m² per hour off the fresh bead. */
  readonly evaporation: Float64Array
  readonly wbgt: Float64Array
  readonly sineOfSun: Float64Array
  /** Of each hour, how much the neighbourhood or the permit allows [min]. */
  readonly permittedMinutes?: Float64Array
  /** 1: no limit is passed, 0: some is. */
  readonly open: Uint8Array
}

/** Wind at the bead and at the crew, over that at 10 m. */
const BEAD_WIND = windAtHeight(1)
const CREW_WIND = windAtHeight(1, 2)
const SIN_CIVIL = Math.sin((CIVIL_DEGREES * Math.PI) / 180)

/** Whether the middle of an hour has light enough: 1 from civil dawn to civil dusk. */
export const lightOf = (sineOfSun: number): 0 | 1 => (sineOfSun > SIN_CIVIL ? 1 : 0)

/** The verdict of every hour, and the figures it rests on. See `printHours` for what they mean. */
export function hourColumns(
  conditions: PrintConditions,
  hours: readonly WeatherHour[],
  permitted: PermittedHours | undefined = conditions.site.permittedHours,
): HourColumns {
  const { rules, batching, site } = conditions
  const column = () => new Float64Array(hours.length)
  const [tap, waterNeeded, evaporation, wbgt] = [column(), column(), column(), column()]
  const cold = coldestMix(conditions)
  const chilled = cold && column()
  const supply = supplyOf(conditions)
  const sineOfSun = sinesOfSun(site, hours)
  const dry = dryMaterial(batching, hours, sineOfSun)
  const most = rules.mixTemperatureMost.value
  for (let i = 0; i < hours.length; i += 1) {
    const hour = hours[i]!
    assert(isKnown(hour), 'every figure of an hour of weather is a number')
    const { air, humidity } = hour
    const wind = hour.wind * BEAD_WIND
    const around = { dry: dry[i]!, air, wind, cylinderSun: sunOnCylinder(hour) }
    const line = nozzleLine(supply, around, 0)
    const warm = line.rest + line.slope * batching.waterTemperature
    if (chilled) chilled[i] = cold(around, warm)
    // Cooled only as far as the limit asks: cold water is dear.
    const inUse = Math.max(chilled ? chilled[i]! : warm, Math.min(warm, most))
    tap[i] = warm
    waterNeeded[i] = (most - line.rest) / line.slope
    evaporation[i] = evaporationPerHour({ air, humidity, wind }, inUse)
    wbgt[i] = crewWbgt(hour, sineOfSun[i]!)
  }
  const minutes = permitted && minutesOf(hours, permitted, site.timeZone)
  const columns = { weather: hours, rules, tap, waterNeeded, evaporation, wbgt, sineOfSun }
  return {
    ...columns,
    ...(permitted ? { permitted } : {}),
    ...(chilled ? { chilled } : {}),
    ...(minutes ? { permittedMinutes: minutes } : {}),
    open: openHours(columns, minutes),
  }
}

/** The way of the mix to the nozzle at the job's bead and speed. */
export function supplyOf({
  batching,
  mix,
  print,
}: Pick<PrintConditions, 'batching' | 'mix' | 'print'>): Supply {
  const { beadWidth, layerHeight } = print
  const area = (beadWidth - layerHeight) * layerHeight + (Math.PI / 4) * layerHeight ** 2
  return { batching, mix, flow: area * print.speed }
}

/** Hours in which no limit is passed; the same comparisons as `isBeyond` makes of the limits of an hour. */
function openHours(
  columns: Pick<HourColumns, 'weather' | 'rules' | 'tap' | 'evaporation' | 'wbgt' | 'sineOfSun'>,
  minutes: Float64Array | undefined,
): Uint8Array {
  const { weather, rules, tap, evaporation, wbgt, sineOfSun } = columns
  const [mixMost, mixLeast] = [rules.mixTemperatureMost.value, rules.mixTemperatureLeast.value]
  const [airLeast, evaporationMost] = [rules.airTemperatureLeast.value, rules.evaporationMost.value]
  const [windMost, gustMost, rainMost] = [rules.windMost.value, rules.gustMost.value, rules.rainMost.value]
  const [wbgtMost, light] = [rules.wbgtMost.value, rules.daylightNeeded.value]
  const open = new Uint8Array(weather.length)
  for (let i = 0; i < open.length; i += 1) {
    const hour = weather[i]!
    const isBeyond =
      tap[i]! > mixMost ||
      mixLeast > tap[i]! ||
      airLeast > hour.air ||
      evaporation[i]! > evaporationMost ||
      hour.wind > windMost ||
      hour.gust > gustMost ||
      hour.rain > rainMost ||
      wbgt[i]! > wbgtMost ||
      light > lightOf(sineOfSun[i]!) ||
      (minutes !== undefined && 60 > minutes[i]!)
    open[i] = isBeyond ? 0 : 1
  }
  return open
}

/** The coldest mix chiller and ice can make, but no colder than a mix may be: there the operator eases them off. None without them. */
function coldestMix(
  conditions: PrintConditions,
): ((around: SupplyHour, tap: Celsius) => Celsius) | undefined {
  const { batching, mix, rules } = conditions
  const ice = iceShareMost(batching, mix)
  if (!batching.chiller && ice === 0) return undefined
  const supply = supplyOf(conditions)
  const water = chilledWater(supply)
  const least = rules.mixTemperatureLeast.value
  return (around, tap) => {
    const line = nozzleLine(supply, around, ice)
    return Math.max(line.rest + line.slope * water, Math.min(tap, least))
  }
}

function minutesOf(hours: readonly WeatherHour[], permitted: PermittedHours, zone: string): Float64Array {
  return localClocks(hours, zone).map(clock => permittedMinutes(permitted, clock))
}

/** One sum finds any figure that is not a number. */
const isKnown = (hour: WeatherHour): boolean =>
  Number.isFinite(
    hour.start +
      hour.air +
      hour.humidity +
      hour.wind +
      hour.gust +
      hour.rain +
      hour.global +
      hour.beam +
      hour.diffuse +
      hour.pressure,
  )

/** Sine of the sun's height in the middle of each hour. */
export function sinesOfSun(
  site: Pick<Job['site'], 'latitude' | 'longitude'>,
  hours: readonly WeatherHour[],
): Float64Array {
  const latitude = (site.latitude * Math.PI) / 180
  const [sinLatitude, cosLatitude] = [Math.sin(latitude), Math.cos(latitude)]
  const sunAt: (at: Instant) => SunOfDay = sunTrack()
  return Float64Array.from(hours, hour => {
    const middle = hour.start + 1800
    const sun = sunAt(middle)
    const H = hourAngle(middle, site.longitude, sun.equationOfTimeMinutes)
    const sine = sinLatitude * sun.sinDeclination + cosLatitude * sun.cosDeclination * Math.cos(H)
    return Math.max(-1, Math.min(1, sine))
  })
}

function crewWbgt(hour: WeatherHour, sinAltitude: number): Celsius {
  const beamShare = hour.global > 0 ? Math.max(0, 1 - hour.diffuse / hour.global) : 0
  return wbgtOutdoors({
    air: hour.air,
    humidity: hour.humidity,
    pressure: hour.pressure,
    wind: hour.wind * CREW_WIND,
    global: hour.global,
    beamShare: Math.min(1, beamShare),
    sinAltitude,
  })
}

/** Dry material as it comes out of silo or bag: by the job's own gain over the mean air, or by the silo's heat balance. */
function dryMaterial(
  { siloGain, siloShade }: Job['batching'],
  hours: readonly WeatherHour[],
  sineOfSun: Float64Array,
): Float64Array {
  if (siloGain !== undefined) return trailingMeans(hours, siloGain)
  return siloTemperatures(siloShade ? hours.map(underShade) : hours, sineOfSun)
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
