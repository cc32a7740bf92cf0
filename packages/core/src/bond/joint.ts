import type { MixModel } from '../mix/index.js'
import type { Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { LongestRest } from './longest-rest.js'
import { structurationRest } from './structuration-rest.js'

export type JointState = 'sound' | 'cold' | 'hardened'
export type Treatment = 'wet' | 'key' | 'bonding-coat'

/** What a rest has done to a joint and what the crew does before the next layer. */
export interface Joint {
  readonly state: JointState
  readonly treatments: readonly Treatment[]
  readonly say: string
}

/** Time left until the joint turns cold; 0 once it has. */
export const pauseBudget = (rested: Seconds, longest: LongestRest): Seconds =>
  Math.max(0, longest.seconds - rested)

/**
 * Judges a joint by its rest: sound; cold (wet it, and key it unless only the skin has dried); or hardened, when the
 * material has passed the start of its strength: then keyed, wetted and coated.
 *
 * Source   common practice, no source: roughen, wet, and use a bonding coat on hardened concrete.
 * Assumes  a cold joint is recorded and shown to the engineer; tension across it is not counted on.
 */
export function judgeJoint(
  rested: Seconds,
  longest: LongestRest,
  mix: MixModel,
  equivalentAge: Seconds,
): Joint {
  assert(rested >= 0 && equivalentAge >= 0, 'a rest has a duration')
  const rest = `rested ${minutes(rested)}, allowed ${minutes(longest.seconds)} (${longest.cause})`
  if (rested <= longest.seconds) return { state: 'sound', treatments: [], say: `Sound joint: ${rest}.` }
  if (equivalentAge >= mix.strength.start)
    return {
      state: 'hardened',
      treatments: ['key', 'wet', 'bonding-coat'],
      say: `Hardened joint: ${rest}. Key it, wet it, brush in a bonding coat, record it.`,
    }
  return equivalentAge < structurationRest(mix).seconds
    ? {
        state: 'cold',
        treatments: ['wet'],
        say: `Cold joint, dry skin: ${rest}. Wet it until matt, record it.`,
      }
    : { state: 'cold', treatments: ['key', 'wet'], say: `Cold joint: ${rest}. Key it, wet it, record it.` }
}

const minutes = (seconds: Seconds): string => `${Math.round(seconds / 60)} min`
