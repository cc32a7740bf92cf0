import type { Campaign } from './campaign.js'
import { checkCampaign } from './check-campaign.js'
import { boundGap } from './fixtures/bound-gap.js'
import { generatedJob } from './fixtures/generated-jobs.js'
import { scheduleCampaign } from './schedule-campaign.js'

const seeds = Array.from({ length: 45 }, (_, i) => i + 1)
const found = new Map<number, Campaign>()

/** Each generated job planned once; what is reported is how far from its proven bound it is up. */
export function bench(): readonly { readonly name: string; readonly once: true; readonly run: () => void }[] {
  return seeds.map(seed => {
    const input = generatedJob(seed)
    return {
      name: `generated job ${seed}, ${input.work.length} sections of ${input.work[0]!.printTimes.length} layers`,
      once: true,
      run: () => void found.set(seed, scheduleCampaign(input)),
    }
  })
}

export function report(): readonly string[] {
  const gaps = [...found].map(([seed, campaign]) => ({
    seed,
    campaign,
    ...boundGap(generatedJob(seed), campaign),
  }))
  const faults = gaps.reduce(
    (sum, { seed, campaign }) => sum + checkCampaign(generatedJob(seed), campaign).length,
    0,
  )
  const counted = [0, 1, 2, 3, 4, 5].map(days => `${days}: ${gaps.filter(one => one.days === days).length}`)
  return [
    ...gaps.map(
      ({ seed, days, took, campaign }) =>
        `job ${seed}: ${days} of ${took} working days above the bound of ${campaign.bound.date} (${((100 * days) / took).toFixed(1)} %)`,
    ),
    `jobs by working days above the bound: ${counted.join(', ')}; within one day or two percent: ${gaps.filter(one => one.isNear).length} of ${gaps.length}; faults found by the checker: ${faults}`,
  ]
}
