import type { LiftPhysics, LiftTrial } from '../campaign/index.js'
import type { PrintRules, Rules } from '../job/index.js'
import type { Limit } from '../limit/index.js'
import { ageFactor, type MixModel } from '../mix/index.js'
import { assert } from '../result/index.js'
import { assessLift, type LiftAssessment, type StandRules } from './assess-lift.js'
import type { LiftAge } from './lift-age.js'
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

/**
 * The standing function of a job for the scheduler: pure to its caller; it keeps what it has answered.
 * Temperatures are lowered to whole fifths of a degree first (at most 1.2 % of the age, on the safe side), so that
 * trials that differ by less share an answer.
 */
export function makeStanding(input: StandingInput): (lift: LiftTrial) => Standing {
  const sections = new Map(input.sections.map(section => [section.section, section]))
  const rules = standRulesOf(input)
  const known = new Map<string, Standing>()
  const answer = (lift: LiftTrial): Standing => {
    const geometry = sections.get(lift.section)
    assert(geometry, `section ${lift.section} has a geometry to stand by`)
    const temperature = Math.floor(lift.temperature * 5) / 5
    const ends = lift.layerEnds.map(end => end - lift.start)
    const key = `${lift.section}/${lift.firstLayer}/${temperature}/${ends.join(',')}`
    const before = known.get(key)
    if (before) return before
    const age: LiftAge = {
      layerHeight: input.print.layerHeight,
      ends,
      factor: ageFactor(temperature, input.mix),
    }
    const now = assessLift(geometry, lift.firstLayer, age, rules)
    if (known.size >= 4096) known.clear()
    known.set(key, now)
    return now
  }
  return answer satisfies LiftPhysics['standing']
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
