import type { CampaignInput, Deliveries } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import { assert } from '../result/index.js'
import { retimedRoutes, type SectionRoutes } from '../route/index.js'
import type { Section } from '../section/index.js'
import type { PaceTable } from '../stand/index.js'
import type { SectionBands } from '../wall/index.js'
import type { PrintHour } from '../weather/index.js'
import { sectionWork } from './section-work.js'
import { sitePhysics } from './site-physics.js'

/** Everything the scheduler reads, from what the stages before it made. */
export function campaignInput(
  job: Job,
  sections: readonly Section[],
  bands: readonly SectionBands[],
  routes: readonly SectionRoutes[],
  hours: readonly PrintHour[],
  paces: Map<string, PaceTable> = new Map(),
): CampaignInput {
  const workOf = (timed: readonly SectionRoutes[]) =>
    sections.map((section, index) => {
      const [laid, routed] = [bands[index], timed[index]]
      assert(laid && routed, `section ${section.id} has beads and routes`)
      return sectionWork(job, section, laid, routed)
    })
  const known = new Map<number, CampaignInput['work']>()
  return {
    work: workOf(routes),
    workAt: speed => {
      const work = known.get(speed) ?? workOf(routes.map(each => retimedRoutes(each, job.machine, speed)))
      known.set(speed, work)
      return work
    },
    hours,
    physics: sitePhysics(job, sections, bands, hours, paces),
    crew: job.crew,
    rules: job.rules,
    calendar: job.calendar,
    timeZone: job.site.timeZone,
    speed: { now: job.print.speed, most: job.machine.printSpeedMost },
    ...(job.pins ? { pins: job.pins } : {}),
    ...(job.aim ? { aim: job.aim } : {}),
    prices: {
      machinePerDay: job.costs.machinePerDay,
      crewPerHour: job.costs.crewPerHour * job.crew.size,
    },
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
