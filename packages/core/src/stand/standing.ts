import type { LiftPhysics, LiftTrial } from '../campaign/index.js'
import type { PrintRules, Rules } from '../job/index.js'
import type { Limit } from '../limit/index.js'
import { ageFactor, type MixModel } from '../mix/index.js'
import { assert } from '../result/index.js'
import { type LiftAssessment, limitOf, type Mechanism, type StandRules, weakest } from './assess-lift.js'
import { type Member, membersOf } from './members.js'
import { paceTable } from './pace-table.js'
import type { StandGeometry } from './stand-geometry.js'
import type { StrengthRule } from './strength.js'

export interface StandingInput {
  readonly mix: MixModel
  readonly print: Pick<PrintRules, 'layerHeight'>
  readonly rules: Pick<Rules, 'standSafety' | 'imperfection'>
  readonly sections: readonly StandGeometry[]
  /** von Mises on the yield stress unless the mix was tested in compression. */
  readonly strength?: StrengthRule
  /** `lower` unless someone wants to see the best estimate; planning uses `lower`. */
  readonly band?: 'lower' | 'fitted'
}

/** What the scheduler gets, and besides the mechanism and the place that govern. */
export interface Standing {
  readonly layers: number
  readonly limit: Limit
  readonly safety: number
  readonly governs: LiftAssessment['governs']
}

/** Tallest lift that the table is made for, by rule or not [m]. */
const TALLEST = 1.6

/**
 * The standing function of a job for the scheduler: pure to its caller; it keeps what it has worked out in a table over the pace
 * (see `paceTable` for what that costs: under 2 %, on the safe side). `assessLift` judges one lift at its own clock.
 */
export function makeStanding(input: StandingInput): (lift: LiftTrial) => Standing {
  const sections = new Map(input.sections.map(section => [section.section, section]))
  const rules = standRulesOf(input)
  const { layerHeight } = input.print
  const table = paceTable(layerHeight, Math.max(2, Math.ceil(TALLEST / layerHeight)), rules)
  const active = new Map<string, readonly Member[]>()
  const membersBetween = (section: string, first: number, layers: number): readonly Member[] => {
    const key = `${section}/${first}/${layers}`
    const known = active.get(key)
    if (known) return known
    const geometry = sections.get(section)
    assert(geometry, `section ${section} has a geometry to stand by`)
    const foot = (first - 1) * layerHeight
    const now = membersOf(geometry, rules, foot, foot + layers * layerHeight)
    active.set(key, now)
    return now
  }
  const answer = (lift: LiftTrial): Standing => {
    const wished = lift.layerEnds.length
    assert(wished > 0, 'a lift has layers')
    const pace = fastestLayer(lift) * ageFactor(lift.temperature, input.mix)
    const mechanisms = [
      ...table.common(pace),
      ...membersBetween(lift.section, lift.firstLayer, wished).map(member =>
        table.buckling(`${lift.section}/${member.what}/${member.place}`, member, pace),
      ),
    ]
    return standingOf(mechanisms, wished, rules.safety)
  }
  return answer satisfies LiftPhysics['standing']
}

/** Time of the quickest layer of the lift, the first one counted from the start of the lift. */
function fastestLayer({ start, layerEnds }: LiftTrial): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < layerEnds.length; i++)
    least = Math.min(least, layerEnds[i]! - (i > 0 ? layerEnds[i - 1]! : start))
  return least
}

function standingOf(mechanisms: readonly Mechanism[], wished: number, safety: number): Standing {
  const layers = Math.min(wished, ...mechanisms.map(mechanism => mechanism.layers))
  const asked = Math.min(wished, layers + 1)
  const governing = weakest(mechanisms, asked, layers < wished ? layers : undefined)
  return {
    layers,
    limit: limitOf(governing, asked, safety),
    // Asked for only of lifts that are chosen: worked out when read.
    get safety() {
      return Math.min(...mechanisms.map(mechanism => mechanism.safetyAt(Math.max(1, layers))))
    },
    governs: { kind: governing.kind, place: governing.place, say: governing.say },
  }
}

export function standRulesOf({ mix, rules, strength, band }: StandingInput): StandRules {
  return {
    density: mix.density,
    poisson: mix.poisson,
    growth: mix[band ?? 'lower'],
    strength: strength ?? { kind: 'von-mises' },
    safety: rules.standSafety.value,
    imperfection: rules.imperfection.value,
  }
}
