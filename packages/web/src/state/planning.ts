import { newPlanCache, type Plan, type PlanInput, type PlanOptions, planJob } from '@dawnlift/core/plan'

const cache = newPlanCache()
let last: { readonly restsOn: string; readonly hours: Plan['campaign']['hours'] } | undefined

/** A plan that keeps of the last one what has not changed: hours that rest on the same job are the same list. */
export async function planWithCache(
  input: PlanInput,
  progress: NonNullable<PlanOptions['progress']>,
): Promise<Plan | undefined> {
  const plan = await planJob(input, { cache, progress })
  if (!plan) return undefined
  const restsOn = hoursRestOn(input)
  if (last?.restsOn !== restsOn) last = { restsOn, hours: plan.campaign.hours }
  return { ...plan, campaign: { ...plan.campaign, hours: last.hours } }
}

/** Everything but what stands on the plan: no wall changes the weather. */
function hoursRestOn({ job, hours }: PlanInput): string {
  const { walls, openings, embeds, columns, sections, noCutAt, name, revision, ...rest } = job
  return JSON.stringify([rest, hours])
}
