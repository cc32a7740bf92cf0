import type { Seconds } from '../quantity/index.js'
import type { CampaignInput } from './campaign-input.js'
import { comparePleasant, type Trail } from './trail.js'

/** What a print day and a lift weigh besides the hours on site they take, in hours on site. */
export interface Weights {
  readonly perDay: Seconds
  readonly perLift: Seconds
  /** Whether a needless low lift is worse than any weight. */
  readonly countsCrumbs: boolean
}

/** Every lift saved is worth four hours on site: a set-up of the nozzle, a joint to cure and to hide. Common practice, no source. */
export const calmWeights: Weights = { perDay: 0, perLift: 4 * 3600, countsCrumbs: true }

/** Where hours on site cost nothing, print days alone count; where nothing does, a machine's day as a crew's. */
const ONLY_DAYS: Seconds = 1e7
const CREWS_DAY: Seconds = 8 * 3600

/**
 * Of what a job costs, its days decide two things: a print day costs the machine and the mix washed out of the hose, an hour on
 * site the crew. The rest is the same however the walls are printed.
 */
export function weightsOf({ prices }: CampaignInput, aim: 'cheapest' | 'calmest'): Weights {
  if (aim === 'calmest') return calmWeights
  const printDay = prices ? prices.machinePerDay + (prices.washedOutPerDay ?? 0) : 0
  const perDay =
    prices && prices.crewPerHour > 0
      ? (printDay / prices.crewPerHour) * 3600
      : printDay > 0
        ? ONLY_DAYS
        : CREWS_DAY
  return { perDay, perLift: 0, countsCrumbs: false }
}

export const weightOf = (trail: Trail, { perDay, perLift }: Weights): Seconds =>
  trail.site + perDay * trail.days + perLift * trail.lifts

/** Pins kept, no needless low lifts where they count, then what weighs least, told apart to the millisecond. */
export const compareWeights = (a: Trail, b: Trail, weights: Weights): number =>
  a.missed - b.missed ||
  (weights.countsCrumbs ? a.crumbs - b.crumbs : 0) ||
  Math.round(1000 * weightOf(a, weights)) - Math.round(1000 * weightOf(b, weights))

/** As they weigh, then as they are pleasant. */
export const compareWeighed = (a: Trail, b: Trail, weights: Weights): number =>
  compareWeights(a, b, weights) || comparePleasant(a, b)
