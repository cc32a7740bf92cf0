import type { Job } from '../job/index.js'
import { retimedRoutes, type SectionRoutes } from '../route/index.js'
import { type LayerRuns, layerRuns } from './section-work.js'

/** Sections as they are run at a speed, by their routes: those stay the same object while the section does. */
export type KnownRuns = WeakMap<SectionRoutes, Map<string, LayerRuns>>

export const newKnownRuns = (): KnownRuns => new WeakMap()

/** The layers of a section at a nozzle speed: as routed at the job's own, timed anew at any other. */
export function keptRuns(
  job: Pick<Job, 'machine' | 'machineOrigin' | 'print'>,
  layers: number,
  routes: SectionRoutes,
  speed: number,
  known: KnownRuns,
): LayerRuns {
  const key = JSON.stringify([job.machine, job.machineOrigin, job.print, speed, layers])
  const own = known.get(routes) ?? new Map<string, LayerRuns>()
  known.set(routes, own)
  const before = own.get(key)
  if (before) return before
  const timed = speed === job.print.speed ? routes : retimedRoutes(routes, job.machine, speed)
  const runs = layerRuns(job, layers, timed)
  own.set(key, runs)
  return runs
}
