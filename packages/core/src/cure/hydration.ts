import { ageFactor, type MixModel } from '../mix/index.js'
import type { Celsius, Seconds, Share } from '../quantity/index.js'

/** Shape of the heat a binder gives off against equivalent age. */
export interface Hydration {
  /** Share of the binder's heat ever given off. */
  readonly ultimate: Share
  /** Age at which 1/e of that is out, at the reference temperature [s]. */
  readonly time: Seconds
  /** β: how steeply the heat comes once it comes [1]. */
  readonly slope: number
}

/**
 * Share of the binder that hydrates in the end: αu = 1.031 w/b/(0.194 + w/b), at most 1
 *
 * @param waterOverBinder  w/b by mass [kg/kg]
 *
 * Source   [Mills1966] by way of a state notebook, read second-hand.
 * Range    water over binder 0.25 to 0.7, plain cement.
 * Assumes  sealed curing; fly ash and slag add to it.
 */
export const ultimateHydration = (waterOverBinder: number): Share =>
  Math.min(1, (1.031 * waterOverBinder) / (0.194 + waterOverBinder))

/** A Type I set for a mix: τ 13.69 h, β 0.905 [SchindlerFolliard2005], from memory; the end by the mix's own water. */
export const hydrationOf = (mix: Pick<MixModel, 'waterRatio' | 'binderShare'>): Hydration => ({
  ultimate: ultimateHydration(mix.waterRatio / mix.binderShare),
  time: 13.69 * 3600,
  slope: 0.905,
})

/**
 * Share of the binder hydrated at an equivalent age: α = αu exp(−(τ/te)^β)
 *
 * Source   [SchindlerFolliard2005], read second-hand.
 * Range    any age; 0 at age 0.
 * Assumes  the age at the curve's own reference temperature.
 */
export const hydrated = ({ ultimate, time, slope }: Hydration, age: Seconds): Share =>
  // (τ/te)^β by way of its logarithm: a general power takes twice as long, and a wall asks for one a cell and step.
  age <= 0 ? 0 : ultimate * Math.exp(-Math.exp(slope * Math.log(time / age)))

/**
 * Heat of hydration now [W/m³]: Hu C α (τ/te)^β (β/te) · age factor
 *
 * Source   [SchindlerFolliard2005], read second-hand; the derivative of `hydrated`.
 * Range    age above 0.
 * Assumes  the mix's activation and reference temperature.
 */
export function hydrationPower(
  mix: MixModel,
  hydration: Hydration,
  age: Seconds,
  temperature: Celsius,
): number {
  if (age <= 0) return 0
  const { time, slope } = hydration
  const rate = hydrated(hydration, age) * (time / age) ** slope * (slope / age)
  return hydrationStore(mix) * rate * ageFactor(temperature, mix)
}

/** All the heat the binder of a cubic metre holds [J/m³]. */
export const hydrationStore = ({ density, waterRatio, binderShare, hydrationHeat }: MixModel): number =>
  (density / (1 + waterRatio)) * binderShare * hydrationHeat

/**
 * Warming of a mix that loses no heat [K]: ΔT = C Hu α/(ρ c)
 *
 * @param storePerCubicMetre  C Hu, all the heat of the binder in a cubic metre [J/m³]
 * @param share               α of it given off
 * @param heatCapacity        ρ c [J/m³K]
 *
 * Source   closed form of the heat balance.
 * Range    any α.
 * Assumes  constant specific heat; thin beads lose most of it on the way.
 */
export const adiabaticRise = (storePerCubicMetre: number, share: Share, heatCapacity: number): Celsius =>
  (storePerCubicMetre * share) / heatCapacity
