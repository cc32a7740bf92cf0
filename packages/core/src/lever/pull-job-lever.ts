import type { Job } from '../job/index.js'
import type { MixModel, StiffnessGrowth, YieldGrowth } from '../mix/index.js'
import { supplyOf, waterFlow } from '../weather/index.js'
import type { JobLever } from './job-lever.js'

/** A job with levers pulled, and how many sections its division shall have at least. */
export interface PulledJob {
  readonly job: Job
  readonly sections?: number
}

/** Share of the material's price that an accelerator adds. Assumption, no source: put your own into the job's rates. */
export const ACCELERATOR_PRICE = 0.08

/** Both crews are paid for so long at a handover [s]. */
export const HANDOVER = 1800

/** The job with one lever pulled; undefined where it does not apply. Pulled one after another, they add up. */
export function pullJobLever(pulled: PulledJob, { kind, setting }: JobLever): PulledJob | undefined {
  const { job } = pulled
  const changed = (change: Partial<Job>): PulledJob => ({ ...pulled, job: { ...job, ...change } })
  switch (kind) {
    case 'earlier-start':
      return setting > job.crew.dayStart
        ? undefined
        : changed({ crew: { ...job.crew, dayStart: job.crew.dayStart - setting } })
    case 'night-start':
      return changed(nightShift(job, setting * 3600))
    case 'longer-shift':
      return changed({ crew: { ...job.crew, longestShift: job.crew.longestShift + setting } })
    case 'second-crew':
      return changed({ crew: { ...job.crew, longestShift: job.crew.longestShift * setting } })
    case 'chilled-water':
      return setting < waterNow(job) ? changed(chilled(job, setting)) : undefined
    case 'ice':
      return changed(withIce(job, setting / 100))
    case 'silo-shade':
      return job.batching.siloShade ? undefined : changed({ batching: shaded(job.batching, setting / 100) })
    case 'accelerator':
      return changed({ mix: accelerated(job.mix, 1 + setting / 100), costs: dosed(job.costs) })
    case 'faster-nozzle':
      return setting / 1000 > job.machine.printSpeedMost + 1e-9
        ? undefined
        : changed(atSpeed(job, setting / 1000))
    case 'slower-pace':
      return changed(atSpeed(job, job.print.speed / (1 + setting / 100)))
    case 'wider-bead':
      return changed({ print: { ...job.print, beadWidth: setting / 1000 } })
    case 'other-sections':
      return { job: { ...job, sections: [] }, sections: setting }
    case 'taller-lift':
      return changed({ rules: { ...job.rules, liftHeight: { value: setting, source: 'by permission' } } })
  }
}

export const waterNow = ({ batching }: Job): number =>
  batching.chiller?.temperature ?? batching.waterTemperature

const atSpeed = (job: Job, speed: number): Partial<Job> => ({ print: { ...job.print, speed } })

/** A day as long as before that starts in the evening and runs through midnight, with lights on site. */
function nightShift({ crew, rules }: Job, dayStart: number): Partial<Job> {
  const span = (crew.dayEnd - crew.dayStart + 86400) % 86400
  return {
    crew: { ...crew, dayStart, dayEnd: (dayStart + span) % 86400 },
    rules: { ...rules, daylightNeeded: { value: 0, source: 'lights on site' } },
  }
}

/** A gain the job names falls with the sun's heat; without one the silo's own balance goes on without the beam. */
const shaded = (batching: Job['batching'], left: number): Job['batching'] =>
  batching.siloGain === undefined
    ? { ...batching, siloShade: true }
    : { ...batching, siloGain: batching.siloGain * left }

/** A chiller large enough for the whole flow of mixing water. */
function chilled(job: Job, temperature: number): Partial<Job> {
  return { batching: { ...job.batching, chiller: { temperature, rate: waterFlow(supplyOf(job)) } } }
}

const withIce = ({ batching, mix }: Job, share: number): Partial<Job> => ({
  batching: {
    ...batching,
    icePerBatchMost: Math.max(batching.icePerBatchMost, share * mix.bag * mix.waterRatio),
  },
})

const dosed = (costs: Job['costs']): Job['costs'] => ({
  ...costs,
  materialPerTonne: costs.materialPerTonne * (1 + ACCELERATOR_PRICE),
})

/** Growth times `factor` from the nozzle on; what the mix starts with stays. Tested ages hold less long in proportion. */
function accelerated(mix: MixModel, factor: number): MixModel {
  const faster = (growth: { readonly yield: YieldGrowth; readonly stiffness: StiffnessGrowth }) => ({
    yield: fasterYield(growth.yield, factor),
    stiffness: fasterStiffness(growth.stiffness, factor),
  })
  return {
    ...mix,
    fitted: faster(mix.fitted),
    lower: faster(mix.lower),
    ...(mix.upper ? { upper: { yield: fasterYield(mix.upper.yield, factor) } } : {}),
    openTime: mix.openTime / factor,
    testedTo: mix.testedTo / factor,
    ...(mix.bondTest ? { bondTest: { ...mix.bondTest, rest: mix.bondTest.rest / factor } } : {}),
  }
}

/** The same curve run through `factor` times as fast: f(t) becomes f(factor·t). */
function fasterYield(growth: YieldGrowth, factor: number): YieldGrowth {
  const until = growth.until === undefined ? {} : { until: growth.until / factor }
  switch (growth.kind) {
    case 'linear':
      return { ...growth, ...until, rate: growth.rate * factor }
    case 'bilinear':
      return {
        ...growth,
        ...until,
        earlyRate: growth.earlyRate * factor,
        kneeAge: growth.kneeAge / factor,
        lateRate: growth.lateRate * factor,
      }
    case 'exponential':
      return { ...growth, ...until, rate: growth.rate * factor, time: growth.time / factor }
  }
}

const fasterStiffness = (growth: StiffnessGrowth, factor: number): StiffnessGrowth => ({
  ...growth,
  ...(growth.until === undefined ? {} : { until: growth.until / factor }),
  rate: growth.rate * factor,
  bend: growth.bend * factor ** 2,
})
