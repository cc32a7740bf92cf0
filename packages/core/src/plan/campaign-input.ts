import type { CampaignInput, Deliveries, LiftPhysics } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import { assert } from '../result/index.js'
import type { SectionRoutes } from '../route/index.js'
import type { Section } from '../section/index.js'
import type { PaceTable } from '../stand/index.js'
import { dayPrices } from '../tally/index.js'
import type { SectionBands } from '../wall/index.js'
import type { PrintHour } from '../weather/index.js'
import { type GainCache, knownGains } from './kept-gains.js'
import { type KnownGeometry, keptGeometry } from './kept-geometry.js'
import { type KnownRuns, keptRuns, newKnownRuns } from './kept-runs.js'
import { sectionWork } from './section-work.js'
import { siteRest, siteStanding } from './site-physics.js'

/** What earlier plans of the job worked out: how long a layer may lie bare, sections as they are run and stand, next gains. */
export interface KnownParts {
  readonly longestRest?: LiftPhysics['longestRest']
  readonly runs?: KnownRuns
  readonly geometry?: KnownGeometry
  readonly gains?: GainCache
}

/** Everything the scheduler reads, from what the stages before it made. */
export function campaignInput(
  job: Job,
  sections: readonly Section[],
  bands: readonly SectionBands[],
  routes: readonly SectionRoutes[],
  hours: readonly PrintHour[],
  paces: Map<string, PaceTable> = new Map(),
  {
    longestRest = siteRest(job, hours),
    runs = newKnownRuns(),
    geometry = new WeakMap(),
    gains,
  }: KnownParts = {},
): CampaignInput {
  const workOf = (speed: number) =>
    sections.map((section, index) => {
      const [laid, routed] = [bands[index], routes[index]]
      assert(laid && routed, `section ${section.id} has beads and routes`)
      return sectionWork(job, section, laid, routed, keptRuns(job, laid.layers, routed, speed, runs))
    })
  const known = new Map<number, CampaignInput['work']>()
  const work = workOf(job.print.speed)
  const printed = work.map((own, i) => ({
    work: own,
    routes: routes[i]!,
    geometry: keptGeometry(job, sections[i]!, bands[i]!, routes[i]!, geometry),
  }))
  return {
    work,
    workAt: speed => {
      const work = known.get(speed) ?? workOf(speed)
      known.set(speed, work)
      return work
    },
    hours,
    physics: {
      standing: siteStanding(
        job,
        printed.map(each => each.geometry),
        paces,
      ),
      longestRest,
      ...(gains ? { known: knownGains(gains, printed) } : {}),
    },
    crew: job.crew,
    rules: job.rules,
    calendar: job.calendar,
    timeZone: job.site.timeZone,
    speed: { now: job.print.speed, most: job.machine.printSpeedMost },
    ...(job.pins ? { pins: job.pins } : {}),
    ...(job.aim ? { aim: job.aim } : {}),
    prices: dayPrices(job),
    ...(job.batching.silo ? { deliveries: deliveriesOf(job) } : {}),
    ...(job.batching.chiller ? { chilledWater: job.batching.chiller.temperature } : {}),
  }
}

/** Dry material as the concrete it makes; what the hose holds is not taken off. */
function deliveriesOf({ batching, mix }: Job): Deliveries {
  const volume = (dry: number) => (dry * (1 + mix.waterRatio)) / mix.density
  const { stock = 0, loads = [] } = batching.silo ?? {}
  return { stock: volume(stock), arrivals: loads.map(({ at, mass }) => ({ at, volume: volume(mass) })) }
}
