import type { Rules } from '../job/index.js'
import { ageAtStrength, ageAtYield, type MixModel, upperYield } from '../mix/index.js'
import type { Instant, Pascals, Seconds } from '../quantity/index.js'
import { type CureWords, cureWords } from './cure-words.js'
import { momentOfTraceAge, type WallHeat } from './wall-trace.js'

export type MilestoneKind =
  | 'cut-no-more'
  | 'frost-safe'
  | 'next-lift'
  | 'pour'
  | 'lintel'
  | 'uncover'
  | 'roof'

/** What a wall has to reach for the next thing to be done to it. */
export interface CureTarget {
  readonly strength: Pascals
  readonly source: string
  readonly what: string
}

/** A screening value beside its moment. `at` is absent where the wall does not get there within the weather known. */
export interface Milestone {
  readonly kind: MilestoneKind
  readonly at?: Instant
  /** Equivalent age needed [s] and the strength that goes with it. */
  readonly age?: Seconds
  readonly strength?: Pascals
  readonly say: string
  readonly source: string
}

/** Shortest and longest time under the cover. */
export const UNCOVER_LEAST: Seconds = 3 * 86400
export const UNCOVER_MOST: Seconds = 7 * 86400

export interface MilestoneOptions {
  readonly targets?: ReturnType<typeof cureTargets>
  readonly words?: CureWords
}

const GRAVITY = 9.81
const CAUTION =
  'Screening value from the maturity of the coldest part: confirm with cylinders cured beside the wall; the licensed engineer decides.'

/** Targets a job may override. All but the frost line are common practice without a source. */
export function cureTargets(
  mix: Pick<MixModel, 'density' | 'strength'>,
  rules: Pick<Rules, 'liftHeight'>,
): Readonly<Record<Exclude<MilestoneKind, 'cut-no-more'>, CureTarget>> {
  const practice = 'common practice, no source'
  const weight = mix.density * GRAVITY * rules.liftHeight.value
  return {
    'frost-safe': { strength: 3.5e6, source: 'ACI306-2016', what: 'withstand one freeze' },
    // Four times the weight of the next lift, and never less than half a megapascal.
    'next-lift': { strength: Math.max(0.5e6, 4 * weight), source: practice, what: 'carry the next lift' },
    pour: { strength: 5e6, source: practice, what: 'take a pour in its column' },
    lintel: { strength: 10e6, source: practice, what: 'carry a lintel' },
    uncover: { strength: 0.7 * mix.strength.ultimate, source: 'ACI308-2016', what: 'be uncovered' },
    roof: { strength: 0.75 * mix.strength.ultimate, source: practice, what: 'carry the roof' },
  }
}

/**
 * When a lift may be cut no more, carry, be poured into, uncovered and loaded, from its least mature place.
 *
 * The next lift also waits for the job's own shortest cure; uncovering for the strength or seven days, whichever is first, with
 * three days at least and never before it is frost-safe.
 */
export function milestones(
  heat: WallHeat,
  mix: MixModel,
  rules: Pick<Rules, 'liftHeight' | 'overnightCure'>,
  { targets = cureTargets(mix, rules), words = cureWords() }: MilestoneOptions = {},
): readonly Milestone[] {
  const reached = (kind: Exclude<MilestoneKind, 'cut-no-more'>) =>
    milestoneOf(heat, mix, kind, targets[kind], words)
  const frost = reached('frost-safe')
  const lift = reached('next-lift')
  return [
    cutNoMore(heat, mix, words),
    laterOf(
      lift,
      heat.start + rules.overnightCure.value,
      `The job asks for ${Math.round(rules.overnightCure.value / 3600)} h at least.`,
      rules.overnightCure.source,
    ),
    frost,
    reached('pour'),
    reached('lintel'),
    uncovering(heat, reached('uncover'), frost),
    reached('roof'),
  ]
}

/** Equivalent age at which every milestone that this mix reaches at all is reached [s]. */
export function lastAge(mix: MixModel, targets: ReturnType<typeof cureTargets>): Seconds {
  const strong = Object.values(targets).map(({ strength }) => ageAtStrength(mix.strength, strength))
  const ages = [...strong, ageAtYield(upperYield(mix), mix.cutUntil)]
  return Math.max(0, ...ages.filter(age => age !== undefined))
}

function milestoneOf(
  heat: WallHeat,
  mix: MixModel,
  kind: MilestoneKind,
  target: CureTarget,
  words: CureWords,
): Milestone {
  const age = ageAtStrength(mix.strength, target.strength)
  const wanted = `${words.strength(target.strength)} to ${target.what}`
  if (age === undefined)
    return { kind, strength: target.strength, source: target.source, say: `The mix never reaches ${wanted}.` }
  const at = momentOfTraceAge(heat, age)
  const common = { kind, age, strength: target.strength, source: target.source }
  return at === undefined
    ? { ...common, say: `${wanted} is not reached within the weather known. ${CAUTION}` }
    : { ...common, at, say: `${wanted}. ${CAUTION}` }
}

function cutNoMore(heat: WallHeat, mix: MixModel, words: CureWords): Milestone {
  const age = ageAtYield(upperYield(mix), mix.cutUntil)
  const kind = 'cut-no-more'
  if (age === undefined)
    return {
      kind,
      source: mix.cutSource,
      say: 'The tests of the mix do not say when it is too stiff to cut by hand.',
    }
  const at = momentOfTraceAge(heat, age)
  return {
    kind,
    age,
    source: mix.cutSource,
    ...(at === undefined ? {} : { at }),
    say: `Too stiff for a knife at ${words.stress(mix.cutUntil)}.`,
  }
}

function laterOf(milestone: Milestone, at: Instant, why: string, source: string): Milestone {
  if (milestone.at === undefined || milestone.at >= at) return milestone
  return { ...milestone, at, source, say: `${milestone.say} ${why}` }
}

function uncovering(heat: WallHeat, strong: Milestone, frost: Milestone): Milestone {
  const [least, most] = [heat.start + UNCOVER_LEAST, heat.start + UNCOVER_MOST]
  if (frost.at === undefined)
    return {
      ...strong,
      kind: 'uncover',
      say: `Leave covered: ${frost.say}`,
      source: frost.source,
      ...(strong.at === undefined ? {} : { at: strong.at }),
    }
  const at = Math.max(least, frost.at, Math.min(most, strong.at ?? most))
  return {
    ...strong,
    at,
    say: `Kept moist ${((at - heat.start) / 86400).toFixed(1)} days: 70 % of the final strength or 7 days, 3 days at least. ${CAUTION}`,
  }
}
