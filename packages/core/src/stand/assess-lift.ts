import type { Limit, LimitKind } from '../limit/index.js'
import { type MixModel, yieldStress } from '../mix/index.js'
import { assert } from '../result/index.js'
import { carriedOn, type LiftAge, layerAge } from './lift-age.js'
import { memberFactor, memberStands } from './member-buckling.js'
import { GRAVITY, type Member, membersOf } from './members.js'
import type { StandGeometry } from './stand-geometry.js'
import { plasticStrength, type StrengthRule, strengthWords } from './strength.js'

/** What a lift is judged by. */
export interface StandRules {
  readonly density: number
  readonly poisson: number
  readonly growth: MixModel['lower']
  readonly strength: StrengthRule
  readonly safety: number
  /** On buckling height and load alike. */
  readonly imperfection: number
}

export interface LiftAssessment {
  /** Layers of the lift that stand with the safety asked for. */
  readonly layers: number
  readonly limit: Limit
  /** Smallest safety over all mechanisms with those layers standing. */
  readonly safety: number
  readonly governs: { readonly kind: LimitKind; readonly place: string; readonly say: string }
}

/** A mechanism's answer: how many layers it allows, and the safety with so many layers standing. */
export interface Mechanism {
  readonly kind: 'first-layer' | 'collapse' | 'buckling'
  readonly place: string
  readonly source: string
  readonly unit: string
  readonly layers: number
  readonly safetyAt: (layers: number) => number
  readonly demandAt: (layers: number) => number
  readonly say: string
}

/** A lift carried on to this many times the height it needs is looked at for buckling; beyond, its load factor speaks. */
export const LOOK_BEYOND = 3

/**
 * How many layers of a lift stand. The lift's foot is the slab or yesterday's wall, hard and clamping; only the lift's
 * own height counts. Every level is held against yield and every member against buckling, at the real ages.
 */
export function assessLift(
  geometry: StandGeometry,
  firstLayer: number,
  lift: LiftAge,
  rules: StandRules,
): LiftAssessment {
  const wished = lift.ends.length
  assert(wished > 0 && rules.safety > 0 && rules.imperfection > 0, 'a lift has layers and rules above zero')
  const foot = (firstLayer - 1) * lift.layerHeight
  return assessMembers(membersOf(geometry, rules, foot, foot + wished * lift.layerHeight), lift, rules)
}

/** Layers known to stand: with the lift carried on, and under the weight times the reserve. */
export interface Standable {
  readonly byHeight: number
  readonly byLoad: number
}

const nothingKnown: Standable = { byHeight: 0, byLoad: 0 }

/** The same of members already looked up; what is known of each saves asking for it. */
export function assessMembers(
  members: readonly Member[],
  lift: LiftAge,
  rules: StandRules,
  known: (member: number) => Standable = () => nothingKnown,
): LiftAssessment {
  const wished = lift.ends.length
  const far = carriedOn(lift, Math.ceil((LOOK_BEYOND * wished * rules.safety) / rules.imperfection) + 1)
  const mechanisms = [
    firstLayerMechanism(lift, rules),
    collapseMechanism(lift, rules),
    ...members.map((member, i) => bucklingMechanism(member, far, wished, rules, known(i))),
  ]
  const layers = Math.min(...mechanisms.map(mechanism => mechanism.layers))
  const standing = Math.max(1, layers)
  const safety = Math.min(...mechanisms.map(mechanism => mechanism.safetyAt(standing)))
  const asked = Math.min(wished, layers + 1)
  const governing = weakest(mechanisms, asked, layers < wished ? layers : undefined)
  return {
    layers,
    limit: limitOf(governing, asked, rules.safety),
    safety,
    governs: { kind: governing.kind, place: governing.place, say: governing.say },
  }
}

export function weakest(
  mechanisms: readonly Mechanism[],
  asked: number,
  stoppedAt: number | undefined,
): Mechanism {
  const stopping = mechanisms.filter(mechanism => stoppedAt === undefined || mechanism.layers === stoppedAt)
  return stopping.reduce((a, b) => (b.safetyAt(asked) < a.safetyAt(asked) ? b : a))
}

export const limitOf = (mechanism: Mechanism, asked: number, needed: number): Limit => {
  const demand = mechanism.demandAt(asked)
  return {
    kind: mechanism.kind,
    demand,
    capacity: (demand * mechanism.safetyAt(asked)) / needed,
    unit: mechanism.unit,
    source: mechanism.source,
  }
}

/** A bead just laid keeps its shape while τ₀(0) ≥ ρgh/√3 [Roussel2018]. */
export function firstLayerMechanism(lift: LiftAge, rules: StandRules): Mechanism {
  const needed = (rules.density * GRAVITY * lift.layerHeight) / Math.sqrt(3)
  const safety = yieldStress(rules.growth.yield, 0) / needed
  return {
    kind: 'first-layer',
    place: 'the bead just laid',
    source: '[Roussel2018]',
    unit: 'Pa',
    layers: safety >= rules.safety ? lift.ends.length : 0,
    safetyAt: () => safety,
    demandAt: () => needed,
    say: 'a bead just laid sags under its own weight',
  }
}

/** Every level under all that lies above it, after every layer. */
export function collapseMechanism(lift: LiftAge, rules: StandRules): Mechanism {
  const safeties = lift.ends.map((_, i) => collapseSafety(lift, i + 1, rules))
  const failing = safeties.findIndex(safety => safety < rules.safety)
  return {
    kind: 'collapse',
    place: 'the weakest level',
    source: '[Suiker2018]',
    unit: 'Pa',
    layers: failing < 0 ? lift.ends.length : failing,
    safetyAt: layers => safeties[layers - 1]!,
    demandAt: layers => rules.density * GRAVITY * lift.layerHeight * layers,
    say: `a level yields under the weight above (${strengthWords(rules.strength)})`,
  }
}

/** Smallest strength over stress of all levels when `top` layers are down. */
export function collapseSafety(lift: LiftAge, top: number, rules: StandRules): number {
  const perLayer = rules.density * GRAVITY * lift.layerHeight
  let least = Number.POSITIVE_INFINITY
  for (let layer = 1; layer <= top; layer++) {
    const strength = plasticStrength(rules.strength, rules.growth.yield, layerAge(lift, layer, top))
    least = Math.min(least, strength / (perLayer * (top - layer + 1)))
  }
  return least
}

function bucklingMechanism(
  member: Member,
  far: LiftAge,
  wished: number,
  rules: StandRules,
  known: Standable,
): Mechanism {
  const most = far.ends.length
  const reserve = rules.safety / rules.imperfection
  // The same layers are looked at whatever is known: a lift that slows down may stand higher up what it does not lower down.
  const stands = (load: number, sure: number) => (layers: number) =>
    layers <= sure || memberStands(member, far, layers, rules, load)
  const byHeight = firstUnstable(most, stands(1, known.byHeight)) ?? most + 1
  const byLoad = firstUnstable(wished, stands(reserve, known.byLoad)) ?? wished + 1
  return bucklingVerdict(member, far, wished, rules, { byHeight, byLoad })
}

/** First layers at which a member buckles: under its weight with the lift carried on, and under its weight times the reserve. */
export interface Critical {
  readonly byHeight: number
  readonly byLoad: number
}

/**
 * Safety against buckling is the smaller of two, each times the imperfection factor:
 * on height, layers at which the wall would buckle if the lift went on at this pace over layers standing;
 * on load, the self-weight that would buckle the wall as it stands over its self-weight. The second keeps a wall
 * that is for ever just short of buckling from passing as one without a limit.
 */
export function bucklingVerdict(
  member: Member,
  lift: LiftAge,
  wished: number,
  rules: StandRules,
  { byHeight, byLoad }: Critical,
): Mechanism {
  const { imperfection, safety } = rules
  return {
    kind: 'buckling',
    place: member.place,
    source: '[Suiker2018]',
    unit: 'm',
    layers: Math.min(wished, Math.floor(((byHeight - 1) * imperfection) / safety + 1e-9), byLoad - 1),
    safetyAt: layers =>
      imperfection * Math.min((byHeight - 1) / layers, memberFactor(member, lift, layers, rules)),
    demandAt: layers => layers * lift.layerHeight,
    say: member.what === 'wythe' ? 'a wythe buckles between its ties' : 'the green wall buckles',
  }
}

/**
 * The first number of layers that does not stand, found by marching up in steps of a twelfth, then halving; or none.
 * `known`: layers already known to stand, with all fewer ones; `failing`: layers known not to, with all more; `most` + 1
 * where even the most may stand.
 */
export function firstUnstable(
  most: number,
  stands: (layers: number) => boolean,
  known = 0,
  failing?: number,
): number | undefined {
  if (failing !== undefined) {
    const first = firstBetween(known, failing, stands)
    return first > most ? undefined : first
  }
  let below = known
  while (below < most) {
    const next = Math.min(most, below + Math.max(1, Math.floor(below / 12)))
    if (!stands(next)) return firstBetween(below, next, stands)
    below = next
  }
  return undefined
}

function firstBetween(standing: number, failing: number, stands: (layers: number) => boolean): number {
  let [low, high] = [standing, failing]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (stands(middle)) low = middle
    else high = middle
  }
  return high
}
