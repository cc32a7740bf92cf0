import { minimum } from '../numeric/index.js'
import type { Celsius } from '../quantity/index.js'
import { carries, correctedAkaike, fitFamily } from './growth-family.js'
import { type Aged, atReference } from './observations.js'
import { yieldFamilies } from './yield-families.js'

/** Temperature sensitivity of the stiffening, fitted where the tests span enough temperatures, else assumed. */
export interface Activation {
  /** Q = Ea/R [K] */
  readonly value: number
  readonly standardError?: number
  readonly fitted: boolean
  readonly say: string
}

const LEAST_SPAN = 5
const FEWEST = 6
const HIGHEST = 15_000

/**
 * The Q that lets tests at different temperatures lie on one curve best: profile of the fit over Q.
 * Needs six tests over 5 K or more; below that Q would be noise and the assumed one is kept, and said.
 *
 * Source   [ASTM-C1074] annex: datum found from tests at several temperatures; profile fit ours.
 * Range    0 … 15 000 K.
 * Assumes  one Q for the whole span of temperatures.
 */
export function fitActivation(tests: readonly Aged[], reference: Celsius, assumed: number): Activation {
  const temperatures = tests.map(({ temperature }) => temperature)
  const span = Math.max(...temperatures) - Math.min(...temperatures)
  if (tests.length < FEWEST || span < LEAST_SPAN)
    return {
      value: assumed,
      fitted: false,
      say: `temperature sensitivity assumed, Q = ${assumed} K: the tests span ${span.toFixed(1)} K; ${FEWEST} tests over ${LEAST_SPAN} K or more would measure it`,
    }
  const misfit = (activation: number) => leastMisfit(tests, { activation, reference })
  const value = minimum(misfit, 0, HIGHEST, 1)
  return { value, ...errorOf(misfit, value), fitted: true, say: `Q = ${value.toFixed(0)} K fitted` }
}

/**
 * Evidence of the better smooth family at a trial Q: AICc, so that a richer curve does not win by its parameters alone.
 * A knee is left to the fit afterwards: it can bend to almost any Q, and costs ten times the rest.
 */
function leastMisfit(tests: readonly Aged[], mix: { activation: number; reference: Celsius }): number {
  const observations = atReference(tests, mix)
  const able = yieldFamilies.filter(family => family.kind !== 'bilinear' && carries(family, observations))
  return Math.min(
    ...able.map(family => {
      const { sumOfSquares } = fitFamily(family, observations)
      return correctedAkaike(sumOfSquares, tests.length, family.names.length) ?? Infinity
    }),
  )
}

/** Standard error from the curvature of the profile: −2·log-likelihood rises by one at one standard error. */
function errorOf(misfit: (q: number) => number, at: number): { standardError?: number } {
  const step = 500
  const bend = (misfit(at + step) + misfit(Math.max(0, at - step)) - 2 * misfit(at)) / step ** 2
  return bend > 0 && at > step ? { standardError: Math.sqrt(2 / bend) } : {}
}
