import type { Job } from '../job/index.js'
import { hoseVolume, splitMix } from './hose.js'

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
