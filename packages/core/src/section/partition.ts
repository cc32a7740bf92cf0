import type { Seconds } from '../quantity/index.js'
import type { SectionGraph } from './section-graph.js'
import { START_TIME } from './section-job.js'

/** Part number of every block. */
export type Partition = readonly number[]

export interface PartitionAims {
  readonly most: Seconds
  readonly least: Seconds
  readonly startTime?: Seconds
  readonly sectionsLeast?: number
}

/** How good a division is; compared in this order. Everything smaller is better. */
export interface PartitionScore {
  /** Layer time above what is allowed, and below what standing needs, summed over the sections [s]. */
  readonly outside: Seconds
  /** Sections fewer than asked for. */
  readonly missing: number
  readonly sections: number
  /** Joints, weighed by how unwelcome they are. */
  readonly joints: number
  /** Longest layer time less shortest [s]. */
  readonly unevenness: Seconds
}

export function partTimes(
  graph: SectionGraph,
  partition: Partition,
  startTime: Seconds = START_TIME,
): Seconds[] {
  const times: Seconds[] = []
  for (const [i, part] of partition.entries()) {
    times[part] = (times[part] ?? startTime) + graph.blocks[i]!.time
  }
  for (const tie of graph.ties) {
    const [a, b] = [partition[tie.a]!, partition[tie.b]!]
    if (a === b) continue
    times[a]! += startTime / 2
    times[b]! += startTime / 2
  }
  return times
}

export function scorePartition(
  graph: SectionGraph,
  partition: Partition,
  aims: PartitionAims,
): PartitionScore {
  const times = partTimes(graph, partition, aims.startTime)
  const outside = times.reduce(
    (sum, time) => sum + Math.max(0, time - aims.most) + Math.max(0, aims.least - time),
    0,
  )
  const cut = graph.ties.filter(tie => partition[tie.a] !== partition[tie.b])
  const uncutPins = graph.ties.filter(tie => tie.cut.isPinned && partition[tie.a] === partition[tie.b])
  return {
    // A pinned cut left out is worse than any layer time.
    outside: outside + uncutPins.length * 1e6,
    missing: Math.max(0, (aims.sectionsLeast ?? 1) - times.length),
    sections: times.length,
    joints: cut.reduce((sum, tie) => sum + tie.cut.cost, 0),
    unevenness: Math.max(...times) - Math.min(...times),
  }
}

/** Negative when `a` is the better division. A second's tenth, a joint's thousandth do not count. */
export function compareScores(a: PartitionScore, b: PartitionScore): number {
  const rough = (x: number, y: number, step: number) => (Math.abs(x - y) < step ? 0 : x - y)
  return (
    rough(a.outside, b.outside, 0.1) ||
    a.missing - b.missing ||
    a.sections - b.sections ||
    rough(a.joints, b.joints, 1e-3) ||
    rough(a.unevenness, b.unevenness, 0.1)
  )
}

/** Parts numbered by the first block they hold, so that equal divisions look equal. */
export function normalised(partition: Partition): Partition {
  const names = new Map<number, number>()
  return partition.map(part => {
    if (!names.has(part)) names.set(part, names.size)
    return names.get(part)!
  })
}

/** Parts that hang together: each connected piece of a part becomes a part of its own. */
export function connectedParts(graph: SectionGraph, isJoined: (tie: number) => boolean): Partition {
  const part = graph.blocks.map((_, i) => i)
  const rootOf = (i: number): number => (part[i] === i ? i : rootOf(part[i]!))
  for (const [i, tie] of graph.ties.entries()) {
    if (!isJoined(i)) continue
    const [a, b] = [rootOf(tie.a), rootOf(tie.b)]
    part[Math.max(a, b)] = Math.min(a, b)
  }
  return normalised(part.map((_, i) => rootOf(i)))
}
