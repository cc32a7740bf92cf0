import { type MixModel, stiffness } from '../mix/index.js'
import type { Metres, Pascals, Seconds } from '../quantity/index.js'
import { type LiftAge, layerAge, modulusProfile } from './lift-age.js'
import { GRAVITY, type Member } from './members.js'
import { type Strip, stripBuckling, stripStands } from './strip.js'

/** What of the rules a member's buckling needs. */
export interface BucklingRules {
  readonly density: number
  readonly growth: Pick<MixModel['lower'], 'stiffness'>
}

/** Self-weight that buckles a member with so many layers down, over its self-weight. */
export function memberFactor(member: Member, lift: LiftAge, layers: number, rules: BucklingRules): number {
  return member.ring
    ? ringFactor(
        member.ring,
        layers * lift.layerHeight,
        ringModulus(lift, layers, rules),
        rules.density * GRAVITY,
      )
    : stripBuckling(stripOf(member, lift, layers, rules)).factor
}

/** Whether a member bears `load` times its self-weight, its height stretched `stretch` times with its run of stiffness. */
export function memberStands(
  member: Member,
  lift: LiftAge,
  layers: number,
  rules: BucklingRules,
  load: number,
  stretch = 1,
): boolean {
  if (member.ring) return memberFactor(member, lift, layers, rules) >= load * stretch
  const strip = stripOf(member, lift, layers, rules)
  if (stretch === 1) return stripStands(strip, load)
  const height = strip.height * stretch
  return stripStands({ ...strip, height, law: member.lawAt(height) }, load)
}

function stripOf(member: Member, lift: LiftAge, layers: number, rules: BucklingRules): Strip {
  const height = layers * lift.layerHeight
  const elements = member.elementsAt(height)
  const modulusAt = (age: Seconds) => stiffness(rules.growth.stiffness, age)
  return {
    height,
    weight: member.weight,
    law: member.lawAt(height),
    modulus: modulusProfile(lift, layers, elements, modulusAt),
    elements,
  }
}

/** Share of the height whose stiffness speaks for a ring: its waves reach well over the foot. */
const RING_LEVEL = 0.35

function ringModulus(lift: LiftAge, layers: number, { growth }: BucklingRules): Pascals {
  const layer = Math.min(layers, Math.floor(RING_LEVEL * layers) + 1)
  return stiffness(growth.stiffness, layerAge(lift, layer, layers))
}

/**
 * Factor on self-weight at which a closed printed ring buckles: 0.605·E·h/(R·ρg·H), E at 35 % of the height.
 *
 * @param ring     radius R and thickness h [m]
 * @param height   over the clamping foot H [m]
 * @param modulus  E of the material at 0.35·H [Pa]
 * @param weight   ρg [N/m³]
 *
 * Source   closed form: classical buckling of a thin cylinder under axial load, 1/√(3(1 − ν²)) with ν = 0.3, from memory; the level of E is
 *          set under our own whole-section shells (11 cylinders, R 0.25–3 m, stiffness 1 to 20-fold from top to foot: the
 *          shells bear 1.05 to 1.6 times as much), one of them checked with CalculiX 2.20.
 * Range    R/h 6 to 40. Screening; the whole-section model decides.
 * Assumes  perfectly round: real cylinders stand 0.5 to 0.7 of it, which is the imperfection factor's task.
 */
export const ringFactor = (
  ring: { readonly radius: Metres; readonly thickness: Metres },
  height: Metres,
  modulus: Pascals,
  weight: number,
): number => (0.605 * modulus * ring.thickness) / (ring.radius * weight * height)
