import type { Job, PermittedHours } from '../job/index.js'
import { isBeyond, type Limit } from '../limit/index.js'
import type { Celsius, Instant } from '../quantity/index.js'
import { assert } from '../result/index.js'
import { crossingBetween } from './crossing.js'
import { CIVIL_DEGREES } from './daylight.js'
import { evaporationPerHour, windAtHeight } from './evaporation.js'
import { wbgtOutdoors } from './heat-stress.js'
import { type HourValues, hourLimits, permittedLimit } from './hour-limits.js'
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
  readonly limits: (hour: WeatherHour, values: HourValues) => readonly Limit[]
  readonly sinLatitude: number
  readonly cosLatitude: number
  readonly sunAt: (at: Instant) => SunOfDay
}

/** Wind at the bead and at the crew, over that at 10 m. */
const BEAD_WIND = windAtHeight(1)
const CREW_WIND = windAtHeight(1, 2)
const SIN_CIVIL = Math.sin((CIVIL_DEGREES * Math.PI) / 180)

/**
 * What each hour means for printing, with every limit and its margin.
 *
 * A limit's demand is what the hour brings, its capacity what the rule allows at most; for a rule from below (cold mix, cold air,
 * daylight) the demand is what the rule asks for and the capacity what the hour brings, so that `isBeyond` serves all.
 * `mix-hot` and `open` are for the job's own tap water; with a chiller or ice on the job, `mixTemperatureChilled` says what the
 * coldest mix would be, and evaporation counts them at work as far as the limit asks.
 *
 * The dry material follows the mean air of the last 24 hours, the job's silo gain above it. The crew's day and its days off are
 * the scheduler's matter, not the hour's; `permitted` is what the neighbourhood or the permit allows, the site's own unless told.
 */
export function printHours(
  conditions: PrintConditions,
  hours: readonly WeatherHour[],
  permitted: PermittedHours | undefined = conditions.site.permittedHours,
): readonly PrintHour[] {
  const standing = standingOf(conditions)
  const dry = trailingMeans(hours, conditions.batching.siloGain)
  const printed = hours.map((hour, index) => printHour(standing, hour, dry[index]!))
  const all = permitted ? withPermitted(printed, permitted, conditions.site.timeZone) : printed
  for (let index = 1; index < all.length; index += 1)
    if (!all[index]!.open) all[index] = withMoments(all[index - 1]!, all[index]!)
  return all
}

/** A limit that held in the hour before is given the moment it was passed. */
function withMoments(before: PrintHour, hour: PrintHour): PrintHour {
  let dated: Limit[] | undefined
  hour.limits.forEach((limit, index) => {
    const was = before.limits[index]
    if (!was || !isBeyond(limit) || isBeyond(was)) return
    const at = crossingBetween(before, hour, limit.kind)
    if (at === undefined) return
    dated ??= [...hour.limits]
    dated[index] = { ...limit, at }
  })
  return dated ? { ...hour, limits: dated } : hour
}

/** The limits that close an hour. */
export const closedBy = (hour: PrintHour): readonly Limit[] => hour.limits.filter(isBeyond)

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

function standingOf(conditions: PrintConditions): Standing {
  const { batching, mix, site } = conditions
  const supply = supplyOf(conditions)
  const ice = iceShareMost(batching, mix)
  const cold = batching.chiller !== undefined || ice > 0
  const latitude = (site.latitude * Math.PI) / 180
  return {
    conditions,
    supply,
    ...(cold ? { chilled: { water: chilledWater(supply), ice } } : {}),
    limits: hourLimits(conditions.rules),
    sinLatitude: Math.sin(latitude),
    cosLatitude: Math.cos(latitude),
    sunAt: sunTrack(),
  }
}

function printHour(standing: Standing, hour: WeatherHour, dry: Celsius): PrintHour {
  assert(isKnown(hour), 'every figure of an hour of weather is a number')
  const { rules, batching } = standing.conditions
  const sine = sineOfSun(standing, hour)
  const wind = hour.wind * BEAD_WIND
  const around = { dry, air: hour.air, wind, cylinderSun: sunOnCylinder(hour) }
  const line = nozzleLine(standing.supply, around, 0)
  const tap = line.rest + line.slope * batching.waterTemperature
  const coldest = standing.chilled ? coldestOf(standing, around, tap) : undefined
  // Cooled only as far as the limit asks: cold water is dear.
  const inUse = Math.max(coldest ?? tap, Math.min(tap, rules.mixTemperatureMost.value))
  const evaporation = evaporationPerHour({ air: hour.air, humidity: hour.humidity, wind }, inUse)
  const wbgt = crewWbgt(hour, sine)
  const limits = standing.limits(hour, { tap, evaporation, wbgt, light: sine > SIN_CIVIL ? 1 : 0 })
  const common = {
    start: hour.start,
    weather: hour,
    mixTemperature: tap,
    waterNeeded: (rules.mixTemperatureMost.value - line.rest) / line.slope,
    evaporation,
    wbgt,
    sunAltitude: Math.asin(sine),
    limits,
    open: allHold(limits),
  }
  return coldest === undefined ? common : { ...common, mixTemperatureChilled: coldest }
}

function withPermitted(hours: readonly PrintHour[], permitted: PermittedHours, zone: string): PrintHour[] {
  const clocks = localClocks(hours, zone)
  return hours.map((hour, index) => {
    const limit = permittedLimit(permitted, clocks[index]!)
    return { ...hour, limits: [...hour.limits, limit], open: hour.open && !isBeyond(limit) }
  })
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

function allHold(limits: readonly Limit[]): boolean {
  for (const limit of limits) if (isBeyond(limit)) return false
  return true
}

/** The coldest mix the chiller and ice can make, but no colder than a mix may be: there the operator eases them off. */
function coldestOf(standing: Standing, around: SupplyHour, tap: Celsius): Celsius {
  const { water, ice } = standing.chilled!
  const line = nozzleLine(standing.supply, around, ice)
  const least = standing.conditions.rules.mixTemperatureLeast.value
  return Math.max(line.rest + line.slope * water, Math.min(tap, least))
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
    wind: hour.wind * CREW_WIND,
    global: hour.global,
    beamShare: Math.min(1, beamShare),
    sinAltitude,
  })
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
