import type { Metres, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import {
  bucklingVerdict,
  collapseMechanism,
  firstLayerMechanism,
  firstUnstable,
  type LiftAssessment,
  LOOK_BEYOND,
  type Mechanism,
  type Standable,
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
 * What stands at a steady pace, worked out once for each pace and member, and no further than was asked. All ages of a
 * lift scale with layer time × age factor, so that temperature and pace are one variable; a lift that pauses is judged at
 * the pace of its fastest layers, which is on the safe side.
 */
export interface PaceTable {
  readonly common: (pace: Seconds) => readonly Mechanism[]
  /** Layers the member lets stand, of so many. */
  readonly standing: (key: string, member: Member, pace: Seconds, wished: number) => number
  /** The member's safety with so many layers standing, or `most` if it is more. */
  readonly safety: (key: string, member: Member, pace: Seconds, layers: number, most: number) => number
  /** All there is to say of the member. */
  readonly buckling: (key: string, member: Member, pace: Seconds) => Mechanism
  /** Layers the member is known to let stand without asking, of so many at the pace of the lift's quickest layer or slower. */
  readonly atLeast: (key: string, member: Member, pace: Seconds, wished: number) => Standable
  /** A lift judged at its own clock; `key` tells all that its answer rests on besides the rules. */
  readonly clocked: (key: string, assess: () => LiftAssessment) => LiftAssessment
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
  const far = Math.ceil(LOOK_BEYOND * most * reserveOf(rules)) + 1
  const commons = new Map<number, readonly Mechanism[]>()
  const members = new Map<string, Map<number, Known>>()
  const lifts = new Map<number, LiftAge>()
  const clocked = new Map<string, LiftAssessment>()
  let answers = 0
  const liftAt = (pace: Seconds): LiftAge => {
    const known = lifts.get(pace) ?? steadyLift(layerHeight, far, pace)
    lifts.set(pace, known)
    return known
  }
  const trialAt = (key: string, member: Member, pace: Seconds): Trial => {
    const { step, pace: lowered } = paceStep(pace)
    const steps = members.get(key) ?? new Map<number, Known>()
    members.set(key, steps)
    let own = steps.get(step)
    if (!own) {
      own = { height: { stands: 0, falls: far + 1 }, load: { stands: 0, falls: most + 1 } }
      steps.set(step, own)
      answers++
    }
    learnFromNeighbours(steps, step, own)
    return { member, lift: liftAt(lowered), rules, most, far, known: own }
  }
  return {
    common: pace => {
      const { step, pace: lowered } = paceStep(pace)
      const known = commons.get(step)
      if (known) return known
      const lift = steadyLift(layerHeight, most, lowered)
      const now = [firstLayerMechanism(lift, rules), collapseMechanism(lift, rules)].map(keepSafeties)
      commons.set(step, now)
      return now
    },
    standing: (key, member, pace, wished) => layersStanding(trialAt(key, member, pace), wished),
    safety: (key, member, pace, layers, least) => safetyUpTo(trialAt(key, member, pace), layers, least),
    buckling: (key, member, pace) => mechanismOf(trialAt(key, member, pace)),
    atLeast: (key, member, pace, wished) => {
      const trial = trialAt(key, member, pace)
      layersStanding(trial, wished)
      return { byHeight: trial.known.height.stands, byLoad: trial.known.load.stands }
    },
    clocked: (key, assess) => {
      const known = clocked.get(key)
      if (known) return known
      const now = assess()
      clocked.set(key, now)
      answers++
      return now
    },
    size: () => answers,
  }
}

/** Layers up to which a member is known to stand, and from which on it is known to fall. */
interface Range {
  stands: number
  falls: number
}

/** What is known of a member at a pace: under its weight with the lift carried on, and under its weight times the reserve. */
interface Known {
  readonly height: Range
  readonly load: Range
  mechanism?: Mechanism
}

interface Trial {
  readonly member: Member
  readonly lift: LiftAge
  readonly rules: StandRules
  readonly most: number
  readonly far: number
  readonly known: Known
}

const reserveOf = ({ safety, imperfection }: StandRules): number => safety / imperfection

const steadyLift = (layerHeight: Metres, layers: number, pace: Seconds): LiftAge => ({
  layerHeight,
  factor: 1,
  ends: Array.from({ length: layers }, (_, i) => (i + 1) * pace),
})

/** At a slower pace every layer is older and stiffer: what stands at a faster one stands here, what falls at a slower one falls. */
function learnFromNeighbours(steps: ReadonlyMap<number, Known>, step: number, { height, load }: Known): void {
  for (const [other, known] of steps) {
    if (other < step) {
      height.stands = Math.max(height.stands, known.height.stands)
      load.stands = Math.max(load.stands, known.load.stands)
    } else {
      height.falls = Math.min(height.falls, known.height.falls)
      load.falls = Math.min(load.falls, known.load.falls)
    }
  }
}

function standsBy(trial: Trial, range: Range, layers: number, load: number): boolean {
  if (layers <= range.stands) return true
  if (layers >= range.falls) return false
  const stands = memberStands(trial.member, trial.lift, layers, trial.rules, load)
  if (stands) range.stands = layers
  else range.falls = layers
  return stands
}

/** Whether the member lets so many layers stand: carried on to what the reserve asks for, and under its weight times that. */
function allows(trial: Trial, layers: number): boolean {
  const { known, rules } = trial
  const needed = Math.ceil((layers - 1e-9) * reserveOf(rules))
  // What is known to fall is not asked of the other.
  if (layers >= known.load.falls || needed >= known.height.falls) return false
  return standsBy(trial, known.load, layers, reserveOf(rules)) && standsBy(trial, known.height, needed, 1)
}

function layersStanding(trial: Trial, wished: number): number {
  if (wished < 1 || allows(trial, wished)) return wished
  const { height, load } = trial.known
  const known = Math.min(Math.floor(height.stands / reserveOf(trial.rules) + 1e-9), load.stands)
  return (firstUnstable(wished, layers => allows(trial, layers), known, wished) ?? wished + 1) - 1
}

/** Whether it is safer than `least` costs two questions; how safe it is costs a dozen. */
function safetyUpTo(trial: Trial, layers: number, least: number): number {
  const { member, lift, rules, known, far } = trial
  const needed = Math.ceil((least * layers) / rules.imperfection)
  const isSafer =
    needed <= far &&
    standsBy(trial, known.height, needed, 1) &&
    memberStands(member, lift, layers, rules, least / rules.imperfection)
  return isSafer ? least : Math.min(least, mechanismOf(trial).safetyAt(layers))
}

function mechanismOf(trial: Trial): Mechanism {
  const { member, lift, rules, most, far, known } = trial
  known.mechanism ??= keepSafeties(
    bucklingVerdict(member, lift, most, rules, {
      byHeight: firstFalling(trial, known.height, far, 1),
      byLoad: firstFalling(trial, known.load, most, reserveOf(rules)),
    }),
  )
  return known.mechanism
}

function firstFalling(trial: Trial, range: Range, most: number, load: number): number {
  const failing = range.falls > most ? undefined : range.falls
  const stands = (layers: number) => standsBy(trial, range, layers, load)
  return firstUnstable(most, stands, range.stands, failing) ?? most + 1
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
