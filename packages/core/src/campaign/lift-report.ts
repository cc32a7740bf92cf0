import type { Limit } from '../limit/index.js'
import { type Allowance, type LiftScene, liftAllowances, wishedLayers } from './allowance.js'
import type { Hold, Lift, NextGain } from './campaign.js'
import { liftVolume } from './day-plan.js'
import { hourOf, TICK } from './hour-table.js'

/** A placed lift as it goes into the campaign: clock times, and why it is no taller. */
export function liftReport(scene: LiftScene, id: string, gains: readonly NextGain[]): Lift {
  const { ground, lift, plan } = scene
  const section = ground.sections[lift.s]!
  const lastLayer = lift.below + lift.layers
  const why = whyNoTaller(scene)
  const following = plan.lifts[plan.lifts.indexOf(lift) + 1]
  const leftFor = why.isChoice && following ? ground.sections[following.s]!.work.section : undefined
  return {
    id,
    section: section.work.section,
    firstLayer: lift.below + 1,
    lastLayer,
    start: lift.start,
    end: lift.ends.at(-1)!,
    layerEnds: lift.ends,
    holds: section.work.holds.filter(hold => isWithin(hold, lift.below, lastLayer)),
    volume: liftVolume(ground, lift),
    length: section.work.lengths.slice(lift.below, lastLayer).reduce((sum, length) => sum + length, 0),
    wishedLayers: wishedLayers(scene),
    binding: why.binding,
    runnersUp: why.runnersUp,
    safety: lift.safety,
    pauseBudget: pauseBudget(scene),
    ...(gains[0] ? { nextGain: gains[0], gains } : {}),
    ...(leftFor === undefined ? {} : { leftFor }),
  }
}

/** Holds on the lift below are worked off before this lift starts; those on its own top wait for the next one. */
const isWithin = (hold: Hold, below: number, lastLayer: number): boolean =>
  hold.afterLayer >= below && hold.afterLayer < lastLayer

export interface Why {
  readonly binding: Limit
  readonly runnersUp: readonly Allowance[]
  /** The lift could be taller, but the rest of the day serves another section. */
  readonly isChoice: boolean
}

/** The limit that stopped a lift and the others, or that the day was left to the next section. */
export function whyNoTaller(scene: LiftScene): Why {
  const { lift } = scene
  const allowances = [...liftAllowances(scene)].sort((a, b) => a.layers - b.layers)
  const first = allowances[0]!
  if (first.layers <= lift.layers) {
    return { binding: first.limit, runnersUp: allowances.slice(1), isChoice: false }
  }
  const isLast = scene.plan.lifts.at(-1) === lift
  const binding = isLast ? leftForNext(scene) : sharedDay(scene)
  return { binding, runnersUp: allowances, isChoice: true }
}

/** The last lift of a day is lower than it could be only so that the next one is worth its while. */
function leftForNext({ ground, lift }: LiftScene): Limit {
  const { layerHeight } = ground.sections[lift.s]!.work
  const [demand, capacity] = [lift.layers + 1, lift.layers].map(layers => layers * layerHeight)
  const source = 'the plan: the next lift is to be worth its while'
  return { kind: 'lift-height', demand: demand!, capacity: capacity!, unit: 'm', source }
}

/** Machine and crew move on to the next section: the day is the limit, at the moment they move. */
function sharedDay({ ground, plan, lift }: LiftScene): Limit {
  const end = lift.ends.at(-1)!
  const next = ground.sections[lift.s]!.printTime[lift.below + lift.layers + 1] ?? 0
  const spent = end - plan.shiftStart
  return { kind: 'shift', at: end, demand: spent + next, capacity: spent, unit: 's', source: 'the job' }
}

/**
 * How long the nozzle may stop, at the worst moment of the lift, before a layer rests too long. The top layer is left bare
 * on purpose; in a lift of one layer the stop lengthens the layer itself.
 */
function pauseBudget({ ground, lift }: LiftScene): number {
  const { table } = ground
  const laid = [lift.start, ...lift.ends]
  const first = lift.layers > 1 ? 1 : 0
  let budget = Number.POSITIVE_INFINITY
  for (let i = first; i < lift.layers; i++) {
    const rest = table.rest(hourOf(table, laid[i]! - (i > 0 ? TICK : 0))).seconds
    budget = Math.min(budget, rest - (laid[i + 1]! - laid[i]!))
  }
  return budget
}
