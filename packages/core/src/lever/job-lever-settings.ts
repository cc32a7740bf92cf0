import type { Job } from '../job/index.js'
import { shadeLeaves, sinesOfSun, type WeatherHour } from '../weather/index.js'
import type { JobLever, JobLeverKind } from './job-lever.js'
import { waterNow } from './pull-job-lever.js'

/** What the settings are chosen from. */
export interface LeverScene {
  readonly job: Job
  readonly hours: readonly WeatherHour[]
  /** Sections the plan has now. */
  readonly sections: number
}

/** Hours that tell how sunny the first weeks are. */
const SUNNY_HOURS = 24 * 28

/** Settings worth trying, mildest first. None: the lever does not apply to this job. */
export function jobLeverSettings(scene: LeverScene, kind: JobLeverKind): readonly JobLever[] {
  return settingsOf(scene, kind).map(setting => ({ kind, setting }))
}

function settingsOf({ job, hours, sections }: LeverScene, kind: JobLeverKind): readonly number[] {
  const { print, rules, crew, batching } = job
  switch (kind) {
    case 'earlier-start':
      return [1800, 3600, 7200].filter(sooner => sooner <= crew.dayStart)
    case 'night-start':
      return crew.dayEnd > crew.dayStart ? [20] : []
    case 'longer-shift':
      return [3600, 7200]
    case 'second-crew':
      return crew.longestShift < dayLength(job) ? [2] : []
    case 'chilled-water':
      return [12, 8, 5].filter(water => water < waterNow(job))
    case 'ice':
      return [25, 50].filter(
        share => (share / 100) * job.mix.bag * job.mix.waterRatio > batching.icePerBatchMost,
      )
    case 'silo-shade':
      return !batching.siloShade && (batching.siloGain ?? 1) > 0.5 ? shadedShare(job, hours) : []
    case 'accelerator':
      return [25, 50]
    case 'faster-nozzle':
      return [1.25, 1.5]
        .map(factor => Math.round(print.speed * factor * 1000))
        .filter(speed => speed / 1000 <= job.machine.printSpeedMost + 1e-9)
    case 'slower-pace':
      return [10, 25, 50]
    case 'wider-bead':
      // Nozzles come in steps of 5 mm: common practice, no source.
      return [1.2, 1.4].map(factor => Math.round((print.beadWidth * 1000 * factor) / 5) * 5)
    case 'other-sections':
      return [sections + 1, sections + 2]
    case 'taller-lift':
      return [1.1, 1.25, 1.5].map(factor => Number((rules.liftHeight.value * factor).toFixed(3)))
  }
}

const dayLength = ({ crew }: Job): number => (crew.dayEnd - crew.dayStart + 86400) % 86400 || 86400

/** What of the sun's gain stays behind a roof that keeps the beam off, in per cent. */
function shadedShare({ site }: Job, hours: readonly WeatherHour[]): readonly number[] {
  const first = hours.slice(0, SUNNY_HOURS)
  if (first.length === 0) return []
  const left = shadeLeaves(first, sinesOfSun(site, first))
  return left === undefined ? [] : [Math.round(100 * left)]
}
