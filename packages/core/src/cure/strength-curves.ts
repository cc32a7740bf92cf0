import type { Seconds } from '../quantity/index.js'

const DAY = 86400

/** Share of the 28-day strength at an age, moist-cured Type I: t/(4 + 0.85 t), t in days. Source [ACI209-1992], from memory; Range 1 day to 1 year; Assumes 20 °C. */
export const strengthShareAci = (age: Seconds): number => age / DAY / (4 + 0.85 * (age / DAY))

/**
 * Share of the mean 28-day strength at an age: exp(s (1 − √(28/t))), t in days
 *
 * @param s  by the class of cement [1]: 0.20 rapid, 0.25 normal, 0.38 slow
 *
 * Source   [EN1992-1] (3.2), from memory.
 * Range    3 days and more.
 * Assumes  20 °C.
 */
export const strengthShareEurocode = (age: Seconds, s: number): number =>
  Math.exp(s * (1 - Math.sqrt(28 / (age / DAY))))
