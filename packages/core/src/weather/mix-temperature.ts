import type { Batching } from '../job/index.js'
import type { MixModel } from '../mix/index.js'
import type { Celsius, CubicMetresPerSecond, MetresPerSecond, Share } from '../quantity/index.js'

/** Specific heat of dry material over that of water. */
export const DRY_HEAT = 0.22
/** Latent heat of ice over the specific heat of water [K]: 333.55/4.187. */
export const ICE_COLD = 79.6
const WATER_HEAT = 4187

/** What goes into a batch: mass [kg] and temperature of each. */
export interface Batch {
  readonly aggregate: readonly [mass: number, temperature: Celsius]
  readonly binder: readonly [mass: number, temperature: Celsius]
  /** Mixing water without ice. */
  readonly water: readonly [mass: number, temperature: Celsius]
  /** Free water on the aggregate. */
  readonly moisture: readonly [mass: number, temperature: Celsius]
  readonly ice: number
}

/**
 * Temperature of a fresh mix [°C].
 *
 *   T = [0.22(Ta Wa + Tc Wc) + Tw Ww + Tm Wm − 79.6 Wi] / [0.22(Wa + Wc) + Ww + Wi + Wm]
 *
 * Source   [ACI305-2010], read second-hand; 79.6 = 333.55/4.187 derived.
 * Range    ice at most about half of the mixing water, best below a fifth.
 * Scatter  1 K.
 * Assumes  the ice melts wholly; heat of mixing and of early hydration come on top.
 */
export function batchTemperature({ aggregate, binder, water, moisture, ice }: Batch): Celsius {
  const heat =
    DRY_HEAT * (aggregate[0] * aggregate[1] + binder[0] * binder[1]) +
    water[0] * water[1] +
    moisture[0] * moisture[1] -
    ICE_COLD * ice
  return heat / (DRY_HEAT * (aggregate[0] + binder[0]) + water[0] + ice + moisture[0])
}

/** Where the mix is on its way to the nozzle: what is around the hose and how fast it runs through. */
export interface Supply {
  readonly batching: Batching
  readonly mix: Pick<MixModel, 'waterRatio' | 'density'>
  readonly flow: CubicMetresPerSecond
}

/** What the hour adds: dry material's temperature, air, wind and the sun on a lying cylinder [W/m²]. */
export interface SupplyHour {
  readonly dry: Celsius
  readonly air: Celsius
  readonly wind: MetresPerSecond
  readonly cylinderSun: number
}

/** Mean sun on the surface of a lying hose [W/m²]: a strip of 1/π faces the beam, half the sky, half the ground (reflection 0.2). Derived. */
export const sunOnCylinder = (sun: {
  readonly global: number
  readonly beam: number
  readonly diffuse: number
}): number => sun.beam / Math.PI + 0.5 * sun.diffuse + 0.1 * sun.global

/**
 * Mix temperature at the nozzle [°C], from ready-mixed dry material and water.
 *
 *   T = Ts + (Tbatch + mixing heat + pump heat − Ts) · exp(−U π D L/(ṁ c))
 *
 * @param water  temperature of the mixing water [°C]
 * @param ice    share of the mixing water given as ice
 *
 * Source   batch by [ACI305-2010]; hose by Newton's cooling, film 5.7 + 3.8 v [McAdams1954], rubber wall 20 W/m²K common practice, no source.
 * Range    steady flow; a stopped hose goes to Ts within an hour.
 * Scatter  1 to 2 K.
 * Assumes  black hose (absorptance 0.9) off the ground; heats of mixing and pumping as the job states them.
 */
export function nozzleTemperature(supply: Supply, hour: SupplyHour, water: Celsius, ice: Share = 0): Celsius {
  const { slope, rest } = nozzleLine(supply, hour, ice)
  return rest + slope * water
}

/**
 * The mixing water [°C] with which the nozzle would just meet a target: Tw = (T − rest)/slope of `nozzleTemperature`.
 *
 * Source   closed form: `nozzleTemperature` [ACI305-2010] is a straight line in the water's temperature.
 * Range    answers below about 2 °C mean that only ice gets there.
 * Assumes  as `nozzleTemperature`.
 */
export function waterForTarget(supply: Supply, hour: SupplyHour, target: Celsius, ice: Share = 0): Celsius {
  const { slope, rest } = nozzleLine(supply, hour, ice)
  return (target - rest) / slope
}

/**
 * The share of the mixing water, at this temperature, to give as ice so that the nozzle just meets a target: i = (T₀ − T)/(T₀ − T₁),
 * T₀ and T₁ the nozzle without ice and with nothing else. 0 if none is needed.
 *
 * Source   closed form: `nozzleTemperature` [ACI305-2010] is a straight line in the share of ice.
 * Range    up to about half of the water, best below a fifth: over 1 no ice gets there.
 * Assumes  all ice melts before the nozzle.
 */
export function iceForTarget(supply: Supply, hour: SupplyHour, target: Celsius, water: Celsius): Share {
  const without = nozzleTemperature(supply, hour, water)
  const gain = without - nozzleTemperature(supply, hour, water, 1)
  return Math.max(0, (without - target) / gain)
}

/** Nozzle temperature as a straight line in the water's temperature. */
export function nozzleLine(
  supply: Supply,
  hour: SupplyHour,
  ice: Share,
): { readonly slope: number; readonly rest: number } {
  const { waterRatio } = supply.mix
  const { mixingHeat, pumpHeat } = supply.batching
  const capacity = DRY_HEAT + waterRatio
  const hose = hoseRun(supply, hour)
  const slope = ((waterRatio * (1 - ice)) / capacity) * hose.kept
  const batchRest = (DRY_HEAT * hour.dry - ICE_COLD * waterRatio * ice) / capacity
  return { slope, rest: hose.end + (batchRest + mixingHeat + pumpHeat - hose.end) * hose.kept }
}

/** Temperature a full hose tends to, and the share of the difference that a run through it keeps. */
export function hoseRun(supply: Supply, hour: SupplyHour): { readonly end: Celsius; readonly kept: Share } {
  const { batching, mix, flow } = supply
  const film = outdoorFilm(hour.wind)
  const conductance = 1 / (1 / film + 1 / 20)
  const sun = batching.hoseInSun ? (0.9 * hour.cylinderSun) / film : 0
  const specificHeat = (WATER_HEAT * (DRY_HEAT + mix.waterRatio)) / (1 + mix.waterRatio)
  const area = Math.PI * batching.hoseDiameter * batching.hoseLength
  return { end: hour.air + sun, kept: Math.exp((-conductance * area) / (flow * mix.density * specificHeat)) }
}

/**
 * Film of an outdoor surface, air and radiation together [W/m²K]: 5.7 + 3.8 v
 *
 * Source   [McAdams1954], from memory.
 * Range    wind at the surface 0 to 5 m/s.
 * Scatter  ±30 %.
 * Assumes  surroundings at air temperature.
 */
export const outdoorFilm = (wind: MetresPerSecond): number => 5.7 + 3.8 * wind

/** Mixing water a flow of mix takes [kg/s]. */
export const waterFlow = ({ mix, flow }: Pick<Supply, 'mix' | 'flow'>): number =>
  (flow * mix.density * mix.waterRatio) / (1 + mix.waterRatio)

/** Water the chiller can give at this flow [°C]: chilled as far as its rate goes, topped up from the tap. */
export function chilledWater(supply: Supply): Celsius {
  const { batching } = supply
  if (!batching.chiller) return batching.waterTemperature
  const share = Math.min(1, batching.chiller.rate / waterFlow(supply))
  return (
    batching.waterTemperature + share * Math.min(0, batching.chiller.temperature - batching.waterTemperature)
  )
}

/** Cooling power that takes a flow of mixing water from the tap's to this temperature [W]; 0 if the tap is cold enough. */
export const chillerPower = (supply: Supply, water: Celsius): number =>
  Math.max(0, supply.batching.waterTemperature - water) * waterFlow(supply) * WATER_HEAT

/** Largest share of the mixing water that may be ice: the job's kilograms per bag over the bag's water. */
export const iceShareMost = (batching: Batching, mix: Pick<MixModel, 'bag' | 'waterRatio'>): Share =>
  Math.min(1, batching.icePerBatchMost / (mix.bag * mix.waterRatio))
