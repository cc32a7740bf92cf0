import type { Seconds } from '../quantity/index.js'
import { mergeStretches } from './merge-stretches.js'
import {
  type Partition,
  type PartitionAims,
  type PartitionScore,
  partTimes,
  scorePartition,
} from './partition.js'
import type { Joint, Section } from './section.js'
import type { SectionGraph } from './section-graph.js'
import { sectionName, walkingOrder } from './section-order.js'

/** One way to divide the plan, with what speaks for and against it. */
export interface SectionProposal {
  readonly sections: readonly Section[]
  /** Estimated time of one layer of each section [s]. */
  readonly layerTimes: readonly Seconds[]
  readonly score: PartitionScore
  readonly reasons: readonly string[]
  /** Whether every combination of cuts was tried. */
  readonly isProven: boolean
}

export function proposalOf(
  graph: SectionGraph,
  partition: Partition,
  aims: PartitionAims,
  isProven: boolean,
): SectionProposal {
  const parts = partTimes(graph, partition, aims.startTime)
  const order = walkingOrder(parts.map((_, part) => middleOf(graph, partition, part)))
  const sections = order.map((part, i) => sectionOf(graph, partition, part, sectionName(i)))
  const score = scorePartition(graph, partition, aims)
  const layerTimes = order.map(part => parts[part]!)
  return { sections, layerTimes, score, reasons: reasonsFor(sections, layerTimes, aims), isProven }
}

function middleOf(graph: SectionGraph, partition: Partition, part: number): readonly [number, number] {
  const blocks = graph.blocks.filter((_, i) => partition[i] === part)
  const time = blocks.reduce((sum, block) => sum + block.time, 0)
  const mean = (of: (block: (typeof blocks)[number]) => number) =>
    blocks.reduce((sum, block) => sum + of(block) * block.time, 0) / time
  return [mean(block => block.x), mean(block => block.y)]
}

export function sectionOf(graph: SectionGraph, partition: Partition, part: number, id: string): Section {
  const stretches = graph.blocks.flatMap((block, i) => (partition[i] === part ? block.stretches : []))
  const joints = graph.ties
    .filter(({ a, b }) => partition[a] !== partition[b] && (partition[a] === part || partition[b] === part))
    .map(({ cut: { wall, at, point, kind, ref } }): Joint => ({ wall, at, point, kind, ref }))
  return { id, stretches: mergeStretches(stretches), joints }
}

export function reasonsFor(
  sections: readonly Section[],
  times: readonly Seconds[],
  aims: PartitionAims,
): readonly string[] {
  const minutes = (seconds: number) => (seconds / 60).toFixed(1)
  const joints = new Map(
    sections.flatMap(section => section.joints.map(joint => [`${joint.wall}@${joint.at}`, joint] as const)),
  )
  const kinds = [...joints.values()].map(joint => `${joint.kind} ${joint.ref}`)
  const span = `${minutes(Math.min(...times))} to ${minutes(Math.max(...times))} min`
  return [
    `${sections.length} ${sections.length === 1 ? 'section' : 'sections'}, a layer takes ${span}; ${minutes(aims.most)} min is the most`,
    joints.size === 0 ? 'no joints' : `${joints.size} joints: ${kinds.join(', ')}`,
  ]
}
