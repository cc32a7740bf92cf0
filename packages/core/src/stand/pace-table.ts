import type { Metres, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import {
  bucklingVerdict,
  type Critical,
  collapseMechanism,
  firstLayerMechanism,
  firstUnstable,
  LOOK_BEYOND,
  type Mechanism,
  type StandRules,
} from './assess-lift.js'
import type { LiftAge } from './lift-age.js'
import { memberStands } from './member-buckling.js'
import type { Member } from './members.js'

/** Paces are lowered to steps of this ratio: a lift then counts as up to 2 % faster than it is, under one layer in fifty. */
const STEP = 1.02

/** The slowest pace that is told apart; a lift slower than this is judged as if it were this fast. */
const slowest: Seconds = 7200

/**
 * What stands at a steady pace, worked out once for each pace and member. All ages of a lift scale with
 * layer time × age factor, so that temperature and pace are one variable; a lift that pauses is judged at the pace of
 * its fastest layers, which is on the safe side.
 */
export interface PaceTable {
  readonly common: (pace: Seconds) => readonly Mechanism[]
  readonly buckling: (key: string, member: Member, pace: Seconds) => Mechanism
  /** How many answers it keeps. */
  readonly size: () => number
}

/** Number of the pace's step, and the pace it stands for. */
export function paceStep(pace: Seconds): { readonly step: number; readonly pace: Seconds } {
  assert(pace > 0 && Number.isFinite(pace), 'a lift has a pace')
  const step = Math.floor(Math.log(Math.min(pace, slowest)) / Math.log(STEP) + 1e-9)
  return { step, pace: STEP ** step }
}

/** `most`: layers that a lift may be asked for at the most. */
export function paceTable(layerHeight: Metres, most: number, rules: StandRules): PaceTable {
  const reserve = rules.safety / rules.imperfection
  const far = Math.ceil(LOOK_BEYOND * most * reserve) + 1
  const commons = new Map<number, readonly Mechanism[]>()
  const members = new Map<string, Map<number, Known>>()
  let answers = 0
  const steady = (pace: Seconds): LiftAge => ({
    layerHeight,
    factor: 1,
    ends: Array.from({ length: far }, (_, i) => (i + 1) * pace),
  })
  return {
    common: pace => {
      const { step, pace: lowered } = paceStep(pace)
      const known = commons.get(step)
      if (known) return known
      const lift = { ...steady(lowered), ends: steady(lowered).ends.slice(0, most) }
      const now = [firstLayerMechanism(lift, rules), collapseMechanism(lift, rules)].map(keepSafeties)
      commons.set(step, now)
      return now
    },
    buckling: (key, member, pace) => {
      const { step, pace: lowered } = paceStep(pace)
      const steps = members.get(key) ?? new Map<number, Known>()
      members.set(key, steps)
      const known = steps.get(step)
      if (known) return known.mechanism
      const now = criticalAt(member, steady(lowered), most, rules, neighbours(steps, step))
      steps.set(step, now)
      answers++
      return now.mechanism
    },
    size: () => answers,
  }
}

interface Known extends Critical {
  readonly mechanism: Mechanism
}

/**
 * As `bucklingMechanism` of one lift, but between the answers at a faster and a slower pace: at a slower one every layer is
 * older and stiffer, so whatever stands at the faster one stands here, and what falls at the slower one falls here.
 */
function criticalAt(
  member: Member,
  lift: LiftAge,
  most: number,
  rules: StandRules,
  { faster, slower }: Neighbours,
): Known {
  const reserve = rules.safety / rules.imperfection
  const far = lift.ends.length
  const byHeight =
    firstUnstable(
      far,
      layers => memberStands(member, lift, layers, rules, 1),
      (faster?.byHeight ?? 1) - 1,
      slower?.byHeight,
    ) ?? far + 1
  const byLoad =
    firstUnstable(
      most,
      layers => memberStands(member, lift, layers, rules, reserve),
      (faster?.byLoad ?? 1) - 1,
      slower?.byLoad,
    ) ?? most + 1
  const mechanism = bucklingVerdict(member, lift, most, rules, { byHeight, byLoad })
  return { byHeight, byLoad, mechanism: keepSafeties(mechanism) }
}

interface Neighbours {
  readonly faster: Critical | undefined
  readonly slower: Critical | undefined
}

/** The nearest paces already worked out. */
function neighbours(steps: ReadonlyMap<number, Known>, step: number): Neighbours {
  let [below, above] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (const known of steps.keys()) {
    if (known < step) below = Math.max(below, known)
    else above = Math.min(above, known)
  }
  return { faster: steps.get(below), slower: steps.get(above) }
}

function keepSafeties(mechanism: Mechanism): Mechanism {
  const known = new Map<number, number>()
  return {
    ...mechanism,
    safetyAt: layers => {
      const before = known.get(layers)
      if (before !== undefined) return before
      const now = mechanism.safetyAt(layers)
      known.set(layers, now)
      return now
    },
  }
}
