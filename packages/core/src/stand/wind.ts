import type { Metres, MetresPerSecond, Pascals } from '../quantity/index.js'

/** q = 0.613·V²: ½ρV² of air at 15 °C and sea level. */
const PRESSURE_PER_SPEED_SQUARED = 0.613

/**
 * Wind pressure on a free-standing wall, in Pa: p = 0.613·Cf·V².
 *
 * @param speed        3-second gust at the wall [m/s]
 * @param coefficient  Cf [1], 1.2–1.8 for a free-standing wall (ends are worst)
 *
 * Source   [ASCE7] 26.10 and figure 29.3-1, from memory; 0.613 = ½·1.225 by hand.
 * Range    screening; exposure, topography and elevation taken as 1.
 * Assumes  the wall stands clear on both sides. Local codes and a licensed engineer decide.
 */
export const windPressure = (speed: MetresPerSecond, coefficient: number): Pascals =>
  PRESSURE_PER_SPEED_SQUARED * coefficient * speed ** 2

/**
 * Gust that presses so, in m/s: V = √(p/(0.613·Cf)), `windPressure` turned round.
 *
 * @param coefficient  Cf [1]
 *
 * Source   [ASCE7], as `windPressure`.
 * Range    pressure ≥ 0.
 * Assumes  as `windPressure`.
 */
export const windSpeedOfPressure = (pressure: Pascals, coefficient: number): MetresPerSecond =>
  Math.sqrt(pressure / (PRESSURE_PER_SPEED_SQUARED * coefficient))

/**
 * Wind pressure that tips a wall which only its weight holds down, in Pa.
 *
 *   p·H²/2 = w·H·t/2  →  p = w·t/H,  w = ρg·(solid material per metre of wall)
 *
 * A solid wall gives p = ρg·t²/H.
 *
 * @param wall  height H over the joint that may open, thickness t face to face, solid width (t for a solid wall) [m]; ρg
 *
 * Source   closed form (statics of a rigid block, no tension across the joint).
 * Range    t small against H.
 * Assumes  full-width bearing, no bond across the joint, no bracing, no return.
 */
export const overturningPressure = (wall: {
  readonly height: Metres
  readonly thickness: Metres
  readonly solidWidth: Metres
  readonly weight: number
}): Pascals => (wall.weight * wall.solidWidth * wall.thickness) / wall.height

/**
 * Wind pressure at which the foot of a cantilever begins to crack or yield in tension, in Pa: p·H²/2 = (f + ρgH·A/b)·S.
 *
 * @param wall     height H [m], section modulus S per metre [m²], solid width [m], ρg
 * @param tension  what the joint bears: 0 for a green wall, a share of the flexural strength once hard [Pa]
 *
 * Source   closed form (elastic bending and weight).
 * Range    walls that bend up their height; no help from returns.
 * Assumes  plane sections: wythes tied by their web. A licensed engineer sets the tension a printed joint may bear.
 */
export const crackingPressure = (
  wall: {
    readonly height: Metres
    readonly sectionModulus: number
    readonly solidWidth: Metres
    readonly weight: number
  },
  tension: Pascals,
): Pascals => (2 * (tension + wall.weight * wall.height) * wall.sectionModulus) / wall.height ** 2

/**
 * Factor on the design wind speed while something is under construction: V = k·V_design, k from 0.75 under six weeks to 0.9.
 *
 * @param weeks  the state lasts [weeks]
 *
 * Source   [ASCE37], from memory.
 * Range    up to five years.
 * Assumes  the speed of the finished building's code. Local codes and a licensed engineer decide.
 */
export function constructionWindFactor(weeks: number): number {
  if (weeks < 6) return 0.75
  if (weeks <= 52) return 0.8
  return weeks <= 104 ? 0.85 : 0.9
}

/** Winds at which masonry practice clears the zone beside a wall: in its first day, and until it is braced or cured. */
export const evacuationWind = {
  initial: 20 * 0.44704,
  intermediate: 35 * 0.44704,
  source: 'common practice of masonry bracing, from memory: a prudent analogy for printed walls',
} as const
