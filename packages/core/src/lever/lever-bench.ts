import {
  type Campaign,
  type CampaignInput,
  type LeastCampaign,
  leastCampaign,
  scheduleLevered,
} from '../campaign/index.js'
import type { Job } from '../job/index.js'
import { leftFrom } from '../log/index.js'
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
import type { JobLever, JobLeverKind } from './job-lever.js'
import { type PulledJob, pullJobLever } from './pull-job-lever.js'

/** A plan as it stands, from which levers are pulled, and the weather it was made from. With a site log, from what stands. */
export interface LeverGround
  extends Pick<Plan, 'job' | 'sections' | 'bands' | 'routes' | 'campaign' | 'soFar'> {
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

/** Levers that change what is printed: too late once something stands. */
const reshaping: readonly JobLeverKind[] = ['wider-bead', 'other-sections']

/** Weather looked at beyond the finish as planned: a lever that takes longer than that buys nothing. */
const BEYOND = 45 * 86400

export function leverBench(ground: LeverGround, cache: PlanCache = newPlanCache()): LeverBench {
  const shapes = new Map<string, PrintedShape | undefined>([[shapeKey({ job: ground.job }), ground]])
  const inputs = new Map<string, CampaignInput>()
  const near = nearHours(ground)
  // Walls already begun go on in the sections they have.
  const begun = ground.soFar?.standing.some(({ layers }) => layers > 0) ? ground.sections : undefined
  const shapeOf = (pulled: PulledJob): PrintedShape | undefined => {
    const key = shapeKey(pulled)
    if (!shapes.has(key)) shapes.set(key, printedShape(pulled, cache, begun))
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
    return ground.soFar ? leftFrom(input, ground.soFar) : input
  }
  return {
    pull: levers => {
      if (begun && levers.some(({ kind }) => reshaping.includes(kind))) return undefined
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

function printedShape(
  pulled: PulledJob,
  cache: PlanCache,
  begun: readonly Section[] | undefined,
): PrintedShape | undefined {
  const { job } = pulled
  if (checkBuildable(job).length > 0) return undefined
  const sections = begun ?? proposedFor(pulled, cache)
  if (!sections) return undefined
  const bands = layAllBeads(job, sections, cache.bands)
  const options = { speed: job.print.speed, origin: job.machineOrigin, cache: cache.routes, units: job.units }
  return { sections, bands, routes: bands.map(each => routeSection(each, job.machine, options).routes) }
}

/** Undefined where the plan cannot be cut into as many sections as are asked for. */
function proposedFor({ job, sections: least }: PulledJob, cache: PlanCache): readonly Section[] | undefined {
  const { sections } = proposeSections(job, {
    beadLengthOf: sampledBeadLength(job, cache.routes),
    ...(least === undefined ? {} : { sectionsLeast: least }),
  })
  return least !== undefined && sections.length !== least ? undefined : sections
}
