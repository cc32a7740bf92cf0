import type { Campaign } from '@dawnlift/core/campaign'
import { newPlanCache, type Plan, type PlanInput, type PlanOptions, planJob } from '@dawnlift/core/plan'

const cache = newPlanCache()

/**
 * A plan that keeps of the last ones what has not changed: what stays is the same object in both. With a campaign to hold
 * its days are not searched.
 */
export const planWithCache = (
  input: PlanInput,
  progress: NonNullable<PlanOptions['progress']>,
  hold?: Campaign,
): Promise<Plan | undefined> => planJob(input, { cache, progress, ...(hold ? { hold } : {}) })

/** Whether a search has come to the very days that were held meanwhile, and so to nothing else than is shown. */
export const isConfirmed = (held: Plan, searched: Plan): boolean => textOf(held) === textOf(searched)

/** Bands, routes and hours are the same objects in both, and long. */
const textOf = ({ held: _, job: __, bands: ___, routes: ____, campaign, ...rest }: Plan): string =>
  JSON.stringify([{ ...campaign, hours: [] }, rest])
