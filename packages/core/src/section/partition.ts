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
  const times: Seconds[] = new Array(partCount(partition)).fill(startTime)
  for (let i = 0; i < partition.length; i++) times[partition[i]!]! += graph.blocks[i]!.time
  for (const tie of graph.ties) {
    const [a, b] = [partition[tie.a]!, partition[tie.b]!]
    if (a === b) continue
    times[a]! += startTime / 2
    times[b]! += startTime / 2
  }
  return times
}

/** The search asks this of every division it looks at, thousands of times: one pass over the ties, one over the parts. */
export function scorePartition(
  graph: SectionGraph,
  partition: Partition,
  aims: PartitionAims,
): PartitionScore {
  const times = partTimes(graph, partition, aims.startTime)
  let [joints, uncutPins] = [0, 0]
  for (const { a, b, cut } of graph.ties) {
    if (partition[a] !== partition[b]) joints += cut.cost
    else if (cut.isPinned) uncutPins++
  }
  let [outside, most, least] = [0, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (const time of times) {
    outside += Math.max(0, time - aims.most) + Math.max(0, aims.least - time)
    most = Math.max(most, time)
    least = Math.min(least, time)
  }
  return {
    // A pinned cut left out is worse than any layer time.
    outside: outside + uncutPins * 1e6,
    missing: Math.max(0, (aims.sectionsLeast ?? 1) - times.length),
    sections: times.length,
    joints,
    unevenness: most - least,
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
  const parent = graph.blocks.map((_, i) => i)
  for (let i = 0; i < graph.ties.length; i++) {
    if (!isJoined(i)) continue
    const [a, b] = [rootOf(parent, graph.ties[i]!.a), rootOf(parent, graph.ties[i]!.b)]
    parent[Math.max(a, b)] = Math.min(a, b)
  }
  // The root of a part is its first block, so parts are numbered by the first block they hold: see `normalised`.
  const part: number[] = []
  let count = 0
  for (let i = 0; i < parent.length; i++) {
    const root = rootOf(parent, i)
    part.push(root === i ? count++ : part[root]!)
  }
  return part
}

function rootOf(parent: number[], i: number): number {
  let root = i
  while (parent[root] !== root) root = parent[root] = parent[parent[root]!]!
  return root
}

function partCount(partition: Partition): number {
  let last = -1
  for (const part of partition) last = Math.max(last, part)
  return last + 1
}
