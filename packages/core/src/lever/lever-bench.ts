import {
  type Campaign,
  type CampaignInput,
  type LeastCampaign,
  leastCampaign,
  scheduleLevered,
} from '../campaign/index.js'
import type { Job } from '../job/index.js'
import {
  campaignInput,
  newPlanCache,
  type Plan,
  type PlanCache,
  sampledBeadLength,
  sitePhysics,
} from '../plan/index.js'
import { routeSection, type SectionRoutes } from '../route/index.js'
import { checkBuildable, proposeSections, type Section } from '../section/index.js'
import { layAllBeads, type SectionBands } from '../wall/index.js'
import { type PrintHour, printHours, type WeatherHour } from '../weather/index.js'
import type { JobLever } from './job-lever.js'
import { type PulledJob, pullJobLever } from './pull-job-lever.js'

/** A plan as it stands, from which levers are pulled, and the weather it was made from. */
export interface LeverGround extends Pick<Plan, 'job' | 'sections' | 'bands' | 'routes' | 'campaign'> {
  readonly hours: readonly WeatherHour[]
}

/** A job with levers pulled, ready to be scheduled. */
export interface LeveredJob {
  readonly levers: readonly JobLever[]
  readonly job: Job
  readonly input: CampaignInput
}

/** Levers in, campaigns out: what several sets of levers have in common is worked out once. */
export interface LeverBench {
  /** Undefined where a lever does not apply, or its walls cannot be built. */
  readonly pull: (levers: readonly JobLever[]) => LeveredJob | undefined
  readonly least: (pulled: LeveredJob) => LeastCampaign
  readonly schedule: (pulled: LeveredJob) => Campaign
}

/** What the shape of the printed wall depends on: sections, beads, routes and what stands. */
interface PrintedShape {
  readonly sections: readonly Section[]
  readonly bands: readonly SectionBands[]
  readonly routes: readonly SectionRoutes[]
}

/** Weather looked at beyond the finish as planned: a lever that takes longer than that buys nothing. */
const BEYOND = 45 * 86400

export function leverBench(ground: LeverGround, cache: PlanCache = newPlanCache()): LeverBench {
  const shapes = new Map<string, PrintedShape | undefined>([[shapeKey({ job: ground.job }), ground]])
  const inputs = new Map<string, CampaignInput>()
  const near = nearHours(ground)
  const shapeOf = (pulled: PulledJob): PrintedShape | undefined => {
    const key = shapeKey(pulled)
    if (!shapes.has(key)) shapes.set(key, printedShape(pulled, cache))
    return shapes.get(key)
  }
  const inputOf = (pulled: PulledJob, shape: PrintedShape): CampaignInput => {
    const { job } = pulled
    const hours = printHours(job, near)
    const key = JSON.stringify([shapeKey(pulled), job.mix])
    const known = inputs.get(key)
    const input = known
      ? withConditions(known, job, hours)
      : campaignInput(job, shape.sections, shape.bands, shape.routes, hours, cache.paces)
    inputs.set(key, input)
    return input
  }
  return {
    pull: levers => {
      const pulled = pullAll(ground.job, levers)
      const shape = pulled && shapeOf(pulled)
      return shape && { levers, job: pulled.job, input: inputOf(pulled, shape) }
    },
    least: ({ input }) => leastCampaign(input),
    schedule: ({ input }) => scheduleLevered(input),
  }
}

/** An input of the same walls and mix under another crew, other rules and other hours. What stands is the same; the rest is not. */
function withConditions(input: CampaignInput, job: Job, hours: readonly PrintHour[]): CampaignInput {
  const { chilledWater: _, ...rest } = input
  const { longestRest } = sitePhysics(job, [], [], hours)
  return {
    ...rest,
    hours,
    physics: { standing: input.physics.standing, longestRest },
    crew: job.crew,
    rules: job.rules,
    ...(job.batching.chiller ? { chilledWater: job.batching.chiller.temperature } : {}),
  }
}

const nearHours = ({ hours, campaign }: LeverGround): readonly WeatherHour[] =>
  campaign.finished ? hours.filter(hour => hour.start < campaign.finish + BEYOND) : hours

const pullAll = (job: Job, levers: readonly JobLever[]): PulledJob | undefined =>
  levers.reduce<PulledJob | undefined>((pulled, lever) => pulled && pullJobLever(pulled, lever), { job })

const shapeKey = ({ job, sections }: PulledJob): string =>
  JSON.stringify([job.print, job.rules.layerTimeMost, sections ?? 'as planned'])

function printedShape({ job, sections: least }: PulledJob, cache: PlanCache): PrintedShape | undefined {
  if (checkBuildable(job).length > 0) return undefined
  const { sections } = proposeSections(job, {
    beadLengthOf: sampledBeadLength(job, cache.routes),
    ...(least === undefined ? {} : { sectionsLeast: least }),
  })
  // Asked for more sections than the plan can be cut into: not this lever.
  if (least !== undefined && sections.length !== least) return undefined
  const bands = layAllBeads(job, sections, cache.bands)
  const options = { speed: job.print.speed, origin: job.machineOrigin, cache: cache.routes, units: job.units }
  return { sections, bands, routes: bands.map(each => routeSection(each, job.machine, options).routes) }
}
