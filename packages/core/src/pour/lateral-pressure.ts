import type { Celsius, KilogramsPerCubicMetre, Metres, MetresPerSecond, Pascals } from '../quantity/index.js'
import { assert } from '../result/index.js'

const GRAVITY = 9.81

/**
 * Full head [Pa]: p = ρ·g·h. What a flowing fill presses with, and the most any fill can.
 *
 * Source   closed form (hydrostatics).
 * Range    any height.
 * Assumes  the whole height still flows; nothing has set and nothing hangs on the cage.
 */
export const headPressure = (density: KilogramsPerCubicMetre, height: Metres): Pascals =>
  density * GRAVITY * height

/** Cement and admixtures of a fill, as the standard sorts them. */
export type FillChemistry = 'portland' | 'portland-retarded' | 'blend' | 'blend-retarded' | 'high-replacement'

/** Cc: retarder includes every admixture that delays set, water reducers too. */
const chemistryFactor: Readonly<Record<FillChemistry, number>> = {
  portland: 1,
  'portland-retarded': 1.2,
  blend: 1.2,
  'blend-retarded': 1.4,
  'high-replacement': 1.4,
}

/**
 * Cw of the standard: light fills press less than their weight says, heavy ones more. Cw = ½(1 + ρ/2320) ≥ 0.8 under 2240 kg/m³,
 * 1 to 2400, ρ/2320 above.
 *
 * Source   [ACI347-04], from memory.
 * Range    800 to 4000 kg/m³.
 * Assumes  density of the fresh fill.
 */
export function weightFactor(density: KilogramsPerCubicMetre): number {
  if (density < 2240) return Math.max(0.8, 0.5 * (1 + density / 2320))
  return density <= 2400 ? 1 : density / 2320
}

/** A fill that is vibrated in, slump at most 175 mm. */
export interface VibratedFill {
  readonly density: KilogramsPerCubicMetre
  readonly chemistry: FillChemistry
  readonly temperature: Celsius
  /** Rise of the fill in the shell. */
  readonly rate: MetresPerSecond
  /** Height of fresh fill. */
  readonly height: Metres
}

/**
 * Lateral pressure [Pa] of a vibrated fill in a column.
 *
 *   p = Cw·Cc·(7.2 + 785·R/(T + 17.8)) kPa,   30·Cw ≤ p ≤ ρ·g·h,   R in m/h
 *
 * Source   [ACI347-04], SI form read second-hand; US form from memory.
 * Range    slump ≤ 175 mm, internal vibration no deeper than 1.2 m; a flowing fill takes `headPressure`.
 * Assumes  rigid forms. A printed shell is no tested formwork: try it at full height before counting on it.
 */
export function columnPressure(fill: VibratedFill): Pascals {
  const kilopascals = 7.2 + (785 * perHour(fill.rate)) / (fill.temperature + 17.8)
  return bounded(kilopascals, fill)
}

/**
 * Lateral pressure [Pa] of a vibrated fill in a wall: as in a column up to 2.1 m/h and 4.2 m of height, else
 *
 *   p = Cw·Cc·(7.2 + 1156/(T + 17.8) + 244·R/(T + 17.8)) kPa,   30·Cw ≤ p ≤ ρ·g·h
 *
 * Source   [ACI347-04], from memory.
 * Range    up to 4.5 m/h; above it full head.
 * Assumes  as `columnPressure`.
 */
export function wallPressure(fill: VibratedFill): Pascals {
  const rate = perHour(fill.rate)
  if (rate > 4.5) return headPressure(fill.density, fill.height)
  if (rate <= 2.1 && fill.height <= 4.2) return columnPressure(fill)
  const kilopascals = 7.2 + (1156 + 244 * rate) / (fill.temperature + 17.8)
  return bounded(kilopascals, fill)
}

/**
 * Fastest rise [m/s] at which a vibrated fill in a column keeps under a pressure: R = (p/(Cw·Cc) − 7.2)·(T + 17.8)/785.
 * None when even the least, 30·Cw kPa, is over it.
 *
 * @param fill  density [kg/m³], chemistry, temperature [°C]
 *
 * Source   [ACI347-04], `columnPressure` turned round.
 * Range    as `columnPressure`.
 * Assumes  as `columnPressure`.
 */
export function columnRateFor(
  pressure: Pascals,
  fill: Pick<VibratedFill, 'density' | 'chemistry' | 'temperature'>,
): MetresPerSecond | undefined {
  const factor = weightFactor(fill.density) * chemistryFactor[fill.chemistry]
  if (pressure < 30e3 * weightFactor(fill.density)) return undefined
  return ((pressure / 1000 / factor - 7.2) * (fill.temperature + 17.8)) / 785 / 3600
}

function bounded(
  kilopascals: number,
  { density, chemistry, temperature, rate, height }: VibratedFill,
): Pascals {
  assert(rate >= 0 && height >= 0 && temperature > -17.8, 'a fill rises, has a height and a temperature')
  const weight = weightFactor(density)
  const pressure = 1000 * weight * chemistryFactor[chemistry] * kilopascals
  return Math.min(headPressure(density, height), Math.max(30e3 * weight, pressure))
}

const perHour = (rate: MetresPerSecond): number => rate * 3600
