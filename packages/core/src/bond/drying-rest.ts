import type { Seconds } from '../quantity/index.js'

/**
 * How long a layer may lie bare before it has lost the water that its bond can spare, in s.
 *
 *   t = w / (e/3600)
 *
 * @param spare        w [kg/m²], by the site's own bond test
 * @param evaporation  e [kg/m²h]; none or condensation: no end, answered as Infinity
 *
 * Source   mass balance.
 * Range    a surface that still shines; e by any of the evaporation formulas.
 * Assumes  the weather stays as it is: `longestRest` goes from hour to hour.
 */
export const dryingRest = (spare: number, evaporation: number): Seconds =>
  evaporation > 0 ? (3600 * spare) / evaporation : Number.POSITIVE_INFINITY
