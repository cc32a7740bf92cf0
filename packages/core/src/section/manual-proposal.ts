import { mergeStretches } from './merge-stretches.js'
import { type PartitionAims, partTimes, scorePartition } from './partition.js'
import type { Joint, Section, Stretch } from './section.js'
import { sectionGraph } from './section-graph.js'
import type { SectionJob, SectionOptions } from './section-job.js'
import { reasonsFor, type SectionProposal, sectionOf } from './section-proposal.js'

/** Sections set by hand, timed and jointed like any other division. They cover the plan; `checkManual` has seen to it. */
export function manualProposal(
  job: SectionJob,
  options: SectionOptions,
  aims: PartitionAims,
): SectionProposal {
  // A cut wherever sections set by hand end, so that the same graph tells times and joints.
  const ends = job.sections.flatMap(section =>
    section.stretches.flatMap(({ wall, from, to }) => [from, to].map(at => ({ wall, at }))),
  )
  const isSame = (a: (typeof ends)[number], b: (typeof ends)[number]) =>
    a.wall === b.wall && Math.abs(a.at - b.at) < 1e-3
  const pinned = ends.filter((end, i) => ends.findIndex(other => isSame(other, end)) === i)
  const walls = job.walls.map(wall => ({ ...wall, joints: [] }))
  const graph = sectionGraph({ ...job, walls, openings: [] }, { ...options, pinned }, 'anywhere')
  const partition = graph.blocks.map(block => ownerOf(job, block.stretches[0]!))
  const times = partTimes(graph, partition, aims.startTime)
  const sections = job.sections.map(({ id, stretches }, part) =>
    nameOpenings(job, { ...sectionOf(graph, partition, part, id), stretches: mergeStretches(stretches) }),
  )
  const layerTimes = sections.map((_, part) => times[part] ?? 0)
  return {
    sections,
    layerTimes,
    score: scorePartition(graph, partition, aims),
    reasons: ['set by hand', ...reasonsFor(sections, layerTimes, aims)],
    isProven: false,
  }
}

/** Number of the section that holds the middle of a stretch. */
function ownerOf({ sections }: SectionJob, stretch: Stretch): number {
  const middle = (stretch.from + stretch.to) / 2
  return sections.findIndex(section =>
    section.stretches.some(own => own.wall === stretch.wall && own.from <= middle && own.to >= middle),
  )
}

/** A joint set by hand within an opening is that opening's joint. */
function nameOpenings(job: SectionJob, section: Section): Section {
  const joints = section.joints.map((joint): Joint => {
    const opening = job.openings.find(
      one => one.wall === joint.wall && Math.abs(one.at - joint.at) <= one.width / 2 + 1e-3,
    )
    return opening && joint.kind === 'marked' ? { ...joint, kind: 'opening', ref: opening.id } : joint
  })
  return { ...section, joints }
}
