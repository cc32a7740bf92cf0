import type {
  Celsius,
  CubicMetresPerSecond,
  KilogramsPerCubicMetre,
  Metres,
  Pascals,
  Seconds,
} from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { Hose } from './bingham-pipe.js'

const GRAVITY = 9.81

/**
 * Pressure [Pa] that lifts the mix to the nozzle: p = ρ·g·Δz.
 *
 * Source   closed form (hydrostatics).
 * Range    any rise; negative where the hose runs downhill.
 * Assumes  the hose is full.
 */
export const risePressure = (density: KilogramsPerCubicMetre, rise: Metres): Pascals =>
  density * GRAVITY * rise

/**
 * How long the mix is in the hose [s], volume over flow: t = π·D²·L/(4·Q).
 *
 * Source   closed form (cylinder).
 * Range    flow > 0.
 * Assumes  the hose is full and moves as one plug; the mean grain, not the slowest at the wall.
 */
export function residenceTime({ length, diameter }: Hose, flow: CubicMetresPerSecond): Seconds {
  assert(flow > 0, 'mix stays in a hose as long as it flows')
  return (Math.PI * diameter ** 2 * length) / (4 * flow)
}

export type AggregateShape = 'angular' | 'rounded'

/**
 * Largest aggregate [m] a hose may carry: d = D/3 for angular, 0.4·D for well-rounded grain, D inside.
 *
 * Source   [ACI304-2R], read second-hand (two pages).
 * Range    rigid pipe and hose; a kinked hose carries less.
 * Assumes  a few oversized grains at most; they lock first at reducers and bends.
 */
export const aggregateMost = (diameter: Metres, shape: AggregateShape): Metres =>
  shape === 'angular' ? diameter / 3 : 0.4 * diameter

/** Largest aggregate a rotor-stator pump carries for long [m]: common practice, no source. */
export const ROTOR_STATOR_AGGREGATE: Metres = 0.008

/** What a hose at rest does to the mix in it. */
export interface StoppedHose {
  readonly diameter: Metres
  /** Temperature the hose tends to in air and sun [°C]. */
  readonly end: Celsius
  /** Heat transfer from the mix through the hose wall to the outside [W/m²K]. */
  readonly conductance: number
  readonly density: KilogramsPerCubicMetre
  /** [J/kgK] */
  readonly specificHeat: number
}

/**
 * Mean temperature [°C] of the mix in a hose after the pump has stood still: T = Te + (T₀ − Te)·exp(−4U·t/(ρ·c·D)).
 *
 * Source   Newton's law of cooling, closed form; fresh mortar holds about 1.1 kJ/kgK.
 * Range    hoses up to about 50 mm; thicker ones are cooler inside than this says.
 * Assumes  one temperature across the hose, no heat of hydration within the stop.
 */
export function stoppedHoseTemperature(hose: StoppedHose, before: Celsius, stopped: Seconds): Celsius {
  assert(stopped >= 0, 'a stop has a duration')
  const pace = (4 * hose.conductance) / (hose.density * hose.specificHeat * hose.diameter)
  return hose.end + (before - hose.end) * Math.exp(-pace * stopped)
}
