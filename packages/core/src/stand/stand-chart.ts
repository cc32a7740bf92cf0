import { ageFactor } from '../mix/index.js'
import type { Celsius, Metres, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { StandRules } from './assess-lift.js'
import { type LiftAge, layerAge } from './lift-age.js'
import { memberStands } from './member-buckling.js'
import { GRAVITY, type Member, membersOf } from './members.js'
import { makeStanding, type Standing, type StandingInput, standRulesOf } from './standing.js'
import { plasticStrength } from './strength.js'

/** One moment of a lift: what stands, and what could stand. */
export interface StandMoment {
  readonly layers: number
  /** Since the lift began. */
  readonly time: Seconds
  /** Printed so far: the demand. */
  readonly height: Metres
  /** Height whose weight the foot would just bear at its age. */
  readonly collapseHeight: Metres
  /** Height at which the wall, stretched with the stiffness it has now from top to foot, would just buckle. */
  readonly bucklingHeight: Metres
  /** What the scheduler allows: height that stands times its safety, the lift carried on at its pace, over the safety asked for. */
  readonly allowedHeight: Metres
  readonly governs: 'collapse' | 'buckling'
  readonly place: string
}

export interface StandChart {
  readonly section: string
  readonly firstLayer: number
  readonly moments: readonly StandMoment[]
  /** No buckling was looked for beyond this many times the height printed. */
  readonly lookedTo: number
}

const LOOKED_TO = 20

/**
 * Height against time with demand and capacity, layer by layer, at the lift's real layer times. Heights that squash it or
 * lean it over are of the wall as it is at each moment; the height allowed is of the lift carried on at its pace.
 */
export function standChart(
  input: StandingInput,
  lift: {
    readonly section: string
    readonly firstLayer: number
    readonly layerEnds: readonly Seconds[]
    readonly start: Seconds
    readonly temperature: Celsius
    /** Of the first so many layers, where the lift warms or cools on its way; `temperature` otherwise. */
    readonly temperatureOf?: (layers: number) => Celsius
  },
): StandChart {
  const geometry = input.sections.find(({ section }) => section === lift.section)
  assert(geometry, `section ${lift.section} has a geometry to stand by`)
  const rules = standRulesOf(input)
  const age: LiftAge = {
    layerHeight: input.print.layerHeight,
    ends: lift.layerEnds.map(end => end - lift.start),
    factor: ageFactor(lift.temperature, input.mix),
  }
  const foot = (lift.firstLayer - 1) * age.layerHeight
  const members = membersOf(geometry, rules, foot, foot + age.ends.length * age.layerHeight)
  const standing = makeStanding(input)
  const moments = age.ends.map((_, i) => {
    const layerEnds = lift.layerEnds.slice(0, i + 1)
    const temperature = lift.temperatureOf?.(i + 1) ?? lift.temperature
    const allowed = standing({ ...lift, layerEnds, temperature })
    return momentOf(members, age, i + 1, rules, allowed)
  })
  return { section: lift.section, firstLayer: lift.firstLayer, moments, lookedTo: LOOKED_TO }
}

function momentOf(
  members: readonly Member[],
  lift: LiftAge,
  layers: number,
  rules: StandRules,
  { layers: standing, safety, governs }: Standing,
): StandMoment {
  const height = layers * lift.layerHeight
  const atFoot = plasticStrength(rules.strength, rules.growth.yield, layerAge(lift, 1, layers))
  const collapseHeight = atFoot / (rules.density * GRAVITY)
  const stretches = members.map(member => stretchFactor(member, lift, layers, rules))
  return {
    layers,
    time: lift.ends[layers - 1]!,
    height,
    collapseHeight,
    bucklingHeight: height * Math.min(...stretches),
    // Its safety is of the layers that stand, fewer than are down where the lift goes too far.
    allowedHeight: (standing * lift.layerHeight * safety) / rules.safety,
    governs: governs.kind === 'buckling' ? 'buckling' : 'collapse',
    place: governs.place,
  }
}

/** How many times higher the wall could be with the same run of stiffness from top to foot, at most `LOOKED_TO`. */
function stretchFactor(member: Member, lift: LiftAge, layers: number, rules: StandRules): number {
  const stands = (factor: number) => memberStands(member, lift, layers, rules, 1, factor)
  if (stands(LOOKED_TO)) return LOOKED_TO
  let [low, high] = [1e-2, LOOKED_TO]
  while (high / low > 1.002) {
    const middle = Math.sqrt(low * high)
    if (stands(middle)) low = middle
    else high = middle
  }
  return low
}
