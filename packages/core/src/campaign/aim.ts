import type { Seconds } from '../quantity/index.js'
import type { CampaignInput } from './campaign-input.js'
import { comparePleasant, type Trail } from './trail.js'

/** What a print day and a lift weigh besides the hours on site they take, in hours on site. */
export interface Weights {
  readonly perDay: Seconds
  readonly perLift: Seconds
}

/** Every lift saved is worth four hours on site: a set-up of the nozzle, a joint to cure and to hide. Common practice, no source. */
export const calmWeights: Weights = { perDay: 0, perLift: 4 * 3600 }

/** A print day costs the machine, an hour on site the crew; without prices a machine's day counts as a crew's. */
export const weightsOf = (input: CampaignInput, aim: 'cheapest' | 'calmest'): Weights =>
  aim === 'calmest'
    ? calmWeights
    : {
        perDay:
          input.prices && input.prices.crewPerHour > 0
            ? (input.prices.machinePerDay / input.prices.crewPerHour) * 3600
            : 8 * 3600,
        perLift: 0,
      }

export const weightOf = (trail: Trail, { perDay, perLift }: Weights): Seconds =>
  trail.site + perDay * trail.days + perLift * trail.lifts

/** Pins kept, no needless low lifts, then what weighs least. */
export const compareWeighed = (a: Trail, b: Trail, weights: Weights): number =>
  a.missed - b.missed ||
  a.crumbs - b.crumbs ||
  Math.round(weightOf(a, weights)) - Math.round(weightOf(b, weights)) ||
  comparePleasant(a, b)
