import type { Campaign } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import { hoseVolume, splitMix } from './hose.js'
import { tallyOf } from './tally-of.js'

/**
 * All of the tally that its print days decide, at the job's rates: the machine and the mix washed out of the hose each day,
 * and an hour of the whole crew between set-up and wash-out.
 */
export function dayPrices({ costs, crew, batching, mix }: Job): {
  readonly machinePerDay: number
  readonly washedOutPerDay: number
  readonly crewPerHour: number
} {
  const lost = splitMix(hoseVolume(batching.hoseDiameter, batching.hoseLength) * mix.density, mix.waterRatio)
  return {
    machinePerDay: costs.machinePerDay,
    washedOutPerDay:
      (lost.dry / 1000) * costs.materialPerTonne + (lost.water / 1000) * costs.waterPerCubicMetre,
    crewPerHour: costs.crewPerHour * crew.size,
  }
}

const NO_DAYS: Campaign = {
  days: [],
  idleDays: [],
  finished: false,
  finish: 0,
  hours: [],
  bound: { days: 0, how: '' },
}

/** What a job costs whatever its days: mobilisation, pours, protection, inserts. */
export const costWithoutDays = (job: Job): number => tallyOf({ job, campaign: NO_DAYS }).cost.total

/** What a campaign costs by the tally; of a job begun, its days to come alone, as the rest is paid whatever they are. */
export const campaignCost = (job: Job, campaign: Campaign, isBegun: boolean): number =>
  tallyOf({ job, campaign }).cost.total - (isBegun ? costWithoutDays(job) : 0)
