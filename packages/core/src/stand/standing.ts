import type { LiftPhysics, LiftTrial } from '../campaign/index.js'
import type { PrintRules, Rules } from '../job/index.js'
import type { Limit } from '../limit/index.js'
import { ageFactor, type MixModel } from '../mix/index.js'
import { assert } from '../result/index.js'
import {
  assessMembers,
  type LiftAssessment,
  limitOf,
  type Mechanism,
  type StandRules,
  weakest,
} from './assess-lift.js'
import { medianLayerTime } from './lift-age.js'
import { type Member, membersOf } from './members.js'
import { type PaceTable, paceTable } from './pace-table.js'
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

/** Tallest lift that the table is made for [m]; a taller one is judged at its own clock. */
const TALLEST = 1.6

/**
 * The standing function of a job for the scheduler: pure to its caller; it keeps what it has worked out in a table over the pace
 * (see `paceTable` for what that costs: under 2 %, on the safe side). A lift of uneven layers that this cuts short is judged
 * once more at its own clock. `tables`: what earlier plans worked out, by mix and rules; the caller owns it.
 */
export function makeStanding(
  input: StandingInput,
  tables: Map<string, PaceTable> = new Map(),
): (lift: LiftTrial) => Standing {
  const sections = new Map(input.sections.map(section => [section.section, section]))
  const rules = standRulesOf(input)
  const { layerHeight } = input.print
  const most = Math.max(2, Math.ceil(TALLEST / layerHeight))
  const tableKey = JSON.stringify([layerHeight, rules])
  const table = tables.get(tableKey) ?? paceTable(layerHeight, most, rules)
  tables.set(tableKey, table)
  const active = new Map<string, readonly KeyedMember[]>()
  const membersBetween = (section: string, first: number, layers: number): readonly KeyedMember[] => {
    const key = `${section}/${first}/${layers}`
    const known = active.get(key)
    if (known) return known
    const geometry = sections.get(section)
    assert(geometry, `section ${section} has a geometry to stand by`)
    const foot = (first - 1) * layerHeight
    const now = membersOf(geometry, rules, foot, foot + layers * layerHeight).map(member => ({
      member,
      key: `${member.place}/${member.key}`,
    }))
    active.set(key, now)
    return now
  }
  /** A lift of uneven layers that the table cuts short, at its own clock; the temperature lowered to a whole fifth. */
  const exactly = (lift: LiftTrial): Standing => {
    const temperature = Math.floor(lift.temperature * 5) / 5
    const ends = lift.layerEnds.map(end => Math.floor(end - lift.start))
    const factor = ageFactor(temperature, input.mix)
    const members = membersBetween(lift.section, lift.firstLayer, ends.length)
    const key = [factor, ends.join(), ...members.map(each => each.key)].join(' ')
    return table.clocked(key, () => {
      // At the pace of its quickest layer the lift would stand no better than it does.
      const pace = fastestLayer({ start: 0, layerEnds: ends }) * factor
      const known = members.map(each => table.atLeast(each.key, each.member, pace, ends.length))
      const judged = members.map(each => each.member)
      return assessMembers(judged, { layerHeight, ends, factor }, rules, i => known[i]!)
    })
  }
  const answer = (lift: LiftTrial): Standing => {
    const wished = lift.layerEnds.length
    assert(wished > 0, 'a lift has layers')
    if (wished > most) return exactly(lift)
    const pace = fastestLayer(lift) * ageFactor(lift.temperature, input.mix)
    const members = membersBetween(lift.section, lift.firstLayer, wished)
    const steady = steadyStanding(table, members, pace, wished, rules.safety)
    if (steady.layers === wished || !isUneven(lift)) return steady
    const own = exactly(lift)
    return own.layers > steady.layers ? own : steady
  }
  return answer satisfies LiftPhysics['standing']
}

/** A member with everything its answers depend on, its place included. */
interface KeyedMember {
  readonly member: Member
  readonly key: string
}

/** Time of the quickest layer of the lift, the first one counted from the start of the lift. */
function fastestLayer({ start, layerEnds }: Pick<LiftTrial, 'start' | 'layerEnds'>): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < layerEnds.length; i++)
    least = Math.min(least, layerEnds[i]! - (i > 0 ? layerEnds[i - 1]! : start))
  return least
}

/** More than 5 % between the quickest and the middling layer: the pace of the quickest would say too little. */
const isUneven = (lift: LiftTrial): boolean =>
  medianLayerTime(lift.layerEnds.map(end => end - lift.start)) > 1.05 * fastestLayer(lift)

/** The search asks thousands of times how many layers stand, and seldom by what limit and how safely: those are worked out when read. */
function steadyStanding(
  table: PaceTable,
  keyed: readonly KeyedMember[],
  pace: number,
  wished: number,
  safety: number,
): Standing {
  const commons = table.common(pace)
  const layers = keyed.reduce(
    (most, { key, member }) => table.standing(key, member, pace, most),
    Math.min(wished, ...commons.map(mechanism => mechanism.layers)),
  )
  const asked = Math.min(wished, layers + 1)
  let known: Mechanism | undefined
  const governing = (): Mechanism => {
    if (known) return known
    // Only what stops at these layers can govern; all may where nothing stops.
    const stopping = keyed.filter(
      ({ key, member }) => layers === wished || table.standing(key, member, pace, asked) === layers,
    )
    const buckling = stopping.map(({ key, member }) => table.buckling(key, member, pace))
    known = weakest([...commons, ...buckling], asked, layers < wished ? layers : undefined)
    return known
  }
  return {
    layers,
    get limit() {
      return limitOf(governing(), asked, safety)
    },
    get safety() {
      const standing = Math.max(1, layers)
      return keyed.reduce(
        (least, { key, member }) => table.safety(key, member, pace, standing, least),
        Math.min(...commons.map(mechanism => mechanism.safetyAt(standing))),
      )
    },
    get governs() {
      const { kind, place, say } = governing()
      return { kind, place, say }
    },
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
