import { ageFactor } from '../mix/index.js'
import type { Celsius, Metres, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import { assessLift, type LiftAssessment } from './assess-lift.js'
import type { LiftAge } from './lift-age.js'
import { type StandingInput, standRulesOf } from './standing.js'

/** A lift at an even pace, before anyone knows its clock times. */
export interface EvenLift {
  readonly section: string
  readonly firstLayer: number
  readonly layers: number
  readonly temperature: Celsius
}

/** Layers down at an even pace. */
export const evenEnds = (layers: number, layerTime: Seconds): readonly Seconds[] =>
  Array.from({ length: layers }, (_, i) => (i + 1) * layerTime)

export interface TallestLift {
  readonly layers: number
  readonly height: Metres
  /** All that was asked for stands: the true limit is higher. */
  readonly allAsked: boolean
  readonly assessment: LiftAssessment
}

/** Tallest lift at this pace, of at most the layers asked for. */
export function tallestLift(input: StandingInput, lift: EvenLift, layerTime: Seconds): TallestLift {
  const assessment = assessEven(input, lift, layerTime)
  return {
    layers: assessment.layers,
    height: assessment.layers * input.print.layerHeight,
    allAsked: assessment.layers === lift.layers,
    assessment,
  }
}

export type ShortestLayerTime =
  | { readonly kind: 'time'; readonly layerTime: Seconds; readonly assessment: LiftAssessment }
  /** Not even at the slowest pace looked at: more cure does not help, or comes too late. */
  | { readonly kind: 'never'; readonly slowest: Seconds; readonly assessment: LiftAssessment }

/** Shortest even layer time at which the whole lift stands, to the second, between two paces. */
export function shortestLayerTime(
  input: StandingInput,
  lift: EvenLift,
  between: { readonly fastest: Seconds; readonly slowest: Seconds },
): ShortestLayerTime {
  assert(between.fastest > 0 && between.slowest > between.fastest, 'paces lie in order')
  const stands = (time: Seconds) => assessEven(input, lift, time).layers >= lift.layers
  const atSlowest = assessEven(input, lift, between.slowest)
  if (atSlowest.layers < lift.layers)
    return { kind: 'never', slowest: between.slowest, assessment: atSlowest }
  let [low, high] = [between.fastest, between.slowest]
  if (stands(low)) high = low
  while (high - low > 1) {
    const middle = (low + high) / 2
    if (stands(middle)) high = middle
    else low = middle
  }
  const layerTime = Math.min(between.slowest, Math.ceil(high))
  return { kind: 'time', layerTime, assessment: assessEven(input, lift, layerTime) }
}

function assessEven(input: StandingInput, lift: EvenLift, layerTime: Seconds): LiftAssessment {
  const geometry = input.sections.find(({ section }) => section === lift.section)
  assert(geometry, `section ${lift.section} has a geometry to stand by`)
  const age: LiftAge = {
    layerHeight: input.print.layerHeight,
    ends: evenEnds(lift.layers, layerTime),
    factor: ageFactor(lift.temperature, input.mix),
  }
  return assessLift(geometry, lift.firstLayer, age, standRulesOf(input))
}
