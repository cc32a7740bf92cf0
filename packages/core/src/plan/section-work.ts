import type { Hold, LiftEnd, SectionWork } from '../campaign/index.js'
import type { Embed, Job, Opening } from '../job/index.js'
import { layerRouteOf, liftRun, type SectionRoutes } from '../route/index.js'
import type { Section, Stretch } from '../section/index.js'
import { pumpedVolume } from '../trial/index.js'
import { layersBelow, type SectionBands } from '../wall/index.js'

/** Each layer of a section as it is run: its time, bead and concrete. */
export type LayerRuns = Pick<SectionWork, 'printTimes' | 'lengths' | 'volumes'>

export function layerRuns(
  job: Pick<Job, 'machine' | 'machineOrigin' | 'print'>,
  layers: number,
  routes: SectionRoutes,
): LayerRuns {
  const each = Array.from({ length: layers }, (_, index) => layerRouteOf(routes, index + 1))
  // As they follow each other: after a change of plan the way to the first bead is another one.
  const { layers: runs } = liftRun(
    routes,
    job.machine,
    { speed: job.print.speed, origin: job.machineOrigin },
    { fromLayer: 1, toLayer: layers },
  )
  return {
    printTimes: runs.map(run => run.time),
    lengths: each.map(route => route.length),
    volumes: each.map(route => pumpedVolume(route, job.machine)),
  }
}

/** What one section asks of the days: its layers as they are run, where it waits and where a lift must end. */
export function sectionWork(
  job: Job,
  section: Section,
  bands: SectionBands,
  routes: SectionRoutes,
  runs: LayerRuns = layerRuns(job, bands.layers, routes),
): SectionWork {
  const ends = liftEnds(job, section, bands.layers)
  return {
    section: section.id,
    layerHeight: job.print.layerHeight,
    ...runs,
    holds: [
      ...lintelHolds(job, ends),
      ...embedHolds(job, section, bands.layers),
      ...inspectionHolds(job, section, bands.layers),
    ].sort((a, b) => a.afterLayer - b.afterLayer),
    liftEnds: ends,
  }
}

/** A lift ends where a lintel's top comes flush, so that it can be cut in the evening before and set next morning. */
function liftEnds(job: Job, section: Section, layers: number): readonly LiftEnd[] {
  return job.openings
    .filter(opening => opening.lintel && section.stretches.some(stretch => bears(opening, stretch)))
    .map(opening => ({
      afterLayer: layersBelow(lintelTop(opening), job.print.layerHeight),
      reason: 'lintel' as const,
      ref: opening.id,
    }))
    .filter(end => end.afterLayer < layers)
    .sort((a, b) => a.afterLayer - b.afterLayer)
}

const lintelTop = (opening: Opening): number => opening.head + (opening.lintel?.height ?? 0)

/** Whether any of the lintel, its bearings included, lies in this stretch. */
function bears(opening: Opening, stretch: Stretch): boolean {
  const half = opening.width / 2 + (opening.lintel?.bearing ?? 0)
  return opening.wall === stretch.wall && opening.at - half < stretch.to && opening.at + half > stretch.from
}

const lintelHolds = (job: Job, ends: readonly LiftEnd[]): readonly Hold[] =>
  ends.map(end => ({
    afterLayer: end.afterLayer,
    duration: job.crew.lintelTime,
    reason: 'lintel',
    ref: end.ref,
  }))

/** An embed that is laid on a layer and printed over stops the nozzle for as long as setting it takes. */
function embedHolds(job: Job, section: Section, layers: number): readonly Hold[] {
  return job.embeds
    .filter(embed => embed.method === 'set' && section.stretches.some(stretch => lies(embed, stretch)))
    .map(embed => ({
      afterLayer: layersBelow(embed.bottom, job.print.layerHeight),
      duration: job.crew.embedTime,
      reason: 'embed' as const,
      ref: embed.id,
    }))
    .filter(hold => hold.afterLayer > 0 && hold.afterLayer < layers)
}

/** The nozzle waits on the last layer below the height; an inspection above the top of the section asks nothing of it. */
function inspectionHolds(job: Job, section: Section, layers: number): readonly Hold[] {
  return (job.inspections ?? [])
    .filter(({ wall }) => section.stretches.some(stretch => stretch.wall === wall))
    .map(({ id, above, takes }) => ({
      afterLayer: layersBelow(above, job.print.layerHeight),
      duration: takes,
      reason: 'inspection' as const,
      ref: id,
    }))
    .filter(hold => hold.afterLayer > 0 && hold.afterLayer < layers)
}

const lies = (embed: Embed, stretch: Stretch): boolean =>
  embed.wall === stretch.wall && embed.at >= stretch.from && embed.at <= stretch.to
