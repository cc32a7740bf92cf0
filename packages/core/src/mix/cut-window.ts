import type { Celsius, Instant, Seconds } from '../quantity/index.js'
import { momentOfAge } from './equivalent-age.js'
import type { MixModel, YieldGrowth } from './mix-model.js'
import { ageAtYield, scaleYield } from './yield-stress.js'

/** When a wall can be cut by hand. */
export interface CutWindow {
  readonly from: Instant
  readonly until: Instant
  /** The window holds for the whole band of the mix; `false`: only for the best estimate, try the wall before the cut. */
  readonly sure: boolean
}

/**
 * From the earliest clean cut to the latest cut with a putty knife, for a layer down at a moment.
 *
 * The slow edge of the band (`lower`) says when every wall keeps the shape of a cut; the quick edge (`upper`) says when
 * the first becomes too stiff. Where the band is so wide that nothing is left between, the best estimate is answered
 * and `sure` is false. Nothing at all when the mix does not stiffen enough within the age it was tested to.
 *
 * @param layerDown      moment the layer was laid
 * @param temperatureAt  temperature of the wall through the day [°C]
 */
export function cutWindow(
  layerDown: Instant,
  temperatureAt: (at: Instant) => Celsius,
  mix: MixModel,
): CutWindow | undefined {
  const moment = (age: Seconds) => momentOfAge(layerDown, age, temperatureAt, mix)
  const slow = agesOfCut(mix, mix.lower.yield, upperYield(mix))
  const best = agesOfCut(mix, mix.fitted.yield, mix.fitted.yield)
  const sure = slow !== undefined && slow[0] < slow[1]
  const ages = sure ? slow : best
  if (!ages) return undefined
  const [from, until] = [moment(ages[0]), moment(ages[1])]
  return from === undefined || until === undefined ? undefined : { from, until, sure }
}

/** Quick edge of the band; where the model has none, the lower band mirrored about the best estimate. */
export function upperYield(mix: Pick<MixModel, 'fitted' | 'lower' | 'upper'>): YieldGrowth {
  if (mix.upper) return mix.upper.yield
  const { fitted, lower } = mix
  return scaleYield(fitted.yield, lower.yield.start > 0 ? fitted.yield.start / lower.yield.start : 1)
}

/** Ages between which every curve of the band can be cut; never beyond what was tested or past the start of strength. */
function agesOfCut(mix: MixModel, slow: YieldGrowth, quick: YieldGrowth): [Seconds, Seconds] | undefined {
  const oldest = Math.min(mix.testedTo, mix.strength.start)
  const from = ageAtYield(slow, mix.cutFrom)
  if (from === undefined || from > oldest) return undefined
  return [from, Math.min(ageAtYield(quick, mix.cutUntil) ?? Infinity, oldest)]
}

/** One cut tried on the wall: how old the layer was (equivalent age) and what became of it. */
export interface CutTrial {
  readonly age: Seconds
  readonly outcome: 'slumped' | 'clean' | 'too-stiff'
}
