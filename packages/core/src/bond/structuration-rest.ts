import type { MixModel } from '../mix/index.js'
import { ageAtYield, upperYield, yieldRate } from '../mix/index.js'
import type { Metres, MetresPerSecond, Seconds } from '../quantity/index.js'
import { intermixingRest } from './intermixing.js'

export interface StructurationRest {
  /** Equivalent age at the reference temperature at which the joint turns cold; Infinity: the mix hardly stiffens. */
  readonly seconds: Seconds
  readonly source: string
}

/** How far a layer's yield stress may grow before the joint on it counts as cold, where no bond test says more. */
export const BOND_GROWTH = 2

/**
 * Longest equivalent rest before structuration makes a cold joint, best evidence first: the site's bond test; else the
 * longer of full intermixing and the time in which the yield stress doubles. Most printed joints lie between the two:
 * no longer mixed, still wet and soft enough to be pressed into one another. By the quick edge of the mix's band: the batch
 * that stiffens first makes the first cold joint.
 */
export function structurationRest(
  mix: MixModel,
  layerHeight: Metres = 0.02,
  speed: MetresPerSecond = 0.1,
): StructurationRest {
  if (mix.bondTest) return { seconds: mix.bondTest.rest, source: mix.bondTest.source }
  const growth = upperYield(mix)
  const doubled = ageAtYield(growth, BOND_GROWTH * growth.start) ?? Infinity
  const mixed = intermixingRest({ ...mix, layerHeight, speed, structuration: yieldRate(growth, 0) })
  return mixed > doubled
    ? { seconds: mixed, source: '[RousselCussigh2008]' }
    : {
        seconds: doubled,
        source: 'yield stress doubled: common practice, no source; confirm with a bond test',
      }
}
