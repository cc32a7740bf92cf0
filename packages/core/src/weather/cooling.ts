import type { Celsius, Instant, Share } from '../quantity/index.js'
import { type PrintConditions, supplyOf } from './hour-columns.js'
import { chilledWater, chillerPower, iceShareMost, waterFlow } from './mix-temperature.js'
import type { PrintHour } from './site-hour.js'

/** What keeps the mix under its limit in one hour. */
export interface CoolingHour {
  readonly start: Instant
  /** Temperature to set the mixing water to; the tap's own where that is cold enough. */
  readonly water: Celsius
  /** Share of the mixing water to give as ice, and its mass while the nozzle runs [kg/s]. */
  readonly iceShare: Share
  readonly ice: number
  /** Power the chiller would need to give that water [W]. */
  readonly chillerPower: number
  /** Whether the job's own chiller and ice reach it. */
  readonly met: boolean
}

/** Cooling over a stretch of hours, e.g. one print day. */
export interface CoolingNeed {
  readonly hours: readonly CoolingHour[]
  /** Mixing water while the nozzle runs [kg/s]. */
  readonly waterFlow: number
  /** Smallest chiller that does all of it without ice, as far as water can [W]. */
  readonly chillerPower: number
  /** Most ice in one hour of running [kg]. */
  readonly icePerHour: number
  /** Start of the first hour in which the job's chiller and ice no longer reach the limit. */
  readonly unmetFrom?: Instant
}

/** No chiller gives water much colder without icing up. Common practice, no source. */
const COLDEST_WATER: Celsius = 2

/**
 * How much chilled water or ice keeps the mix under its limit, hour by hour; how large a chiller that takes; and from which hour on
 * the job's own no longer do.
 *
 *   ice share x: (1 − x) Tw − 79.6 x = Tneeded
 *
 * Source   [ACI305-2010], the batch formula solved for its ice.
 * Range    ice to about half of the mixing water, best below a fifth.
 * Scatter  1 to 2 K of the mix.
 * Assumes  the nozzle runs all hour; idle minutes ask for less water but warm the hose.
 */
export function coolingNeed(conditions: PrintConditions, hours: readonly PrintHour[]): CoolingNeed {
  const supply = supplyOf(conditions)
  const tap = conditions.batching.waterTemperature
  const reach = { water: chilledWater(supply), ice: iceShareMost(conditions.batching, conditions.mix) }
  const flow = waterFlow(supply)
  const cooled = hours.map((hour): CoolingHour => {
    const needed = hour.waterNeeded ?? tap
    const water = Math.min(tap, Math.max(needed, reach.water))
    const iceShare = needed < water ? iceShareFor(needed, water) : 0
    const power = chillerPower(supply, Math.min(tap, Math.max(needed, COLDEST_WATER)))
    return {
      start: hour.start,
      water,
      iceShare,
      ice: iceShare * flow,
      chillerPower: power,
      met: iceShare <= reach.ice + 1e-9,
    }
  })
  const unmet = cooled.find(hour => !hour.met)
  return {
    hours: cooled,
    waterFlow: flow,
    chillerPower: Math.max(0, ...cooled.map(hour => hour.chillerPower)),
    icePerHour: Math.max(0, ...cooled.map(hour => hour.ice)) * 3600,
    ...(unmet ? { unmetFrom: unmet.start } : {}),
  }
}

/** Share of the mixing water given as ice that is worth water of another temperature; over 1 where no ice suffices. */
const iceShareFor = (needed: Celsius, water: Celsius): Share => (water - needed) / (water + 79.6)
