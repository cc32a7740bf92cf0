import type { CampaignInput, SectionStanding } from '../campaign/index.js'
import type { CubicMetres, Instant } from '../quantity/index.js'

/** What stands, as of when, and what the rest is planned with. */
export interface Stands {
  readonly now: Instant
  readonly standing: readonly SectionStanding[]
  /** When today's shift began, if it has. */
  readonly shiftBegan?: Instant
  /** What was printed is not in the silo any more. */
  readonly printed?: CubicMetres
}

/** What is left of a job, to be planned from what stands. */
export function leftFrom(
  input: CampaignInput,
  { now, standing, shiftBegan, printed = 0 }: Stands,
): CampaignInput {
  const { deliveries } = input
  return {
    ...input,
    calendar: { ...input.calendar, now },
    standing,
    ...(deliveries ? { deliveries: { ...deliveries, stock: deliveries.stock - printed } } : {}),
    ...(shiftBegan === undefined ? {} : { shiftBegan }),
  }
}
