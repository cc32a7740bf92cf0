import type { Seconds } from '../quantity/index.js'
import type { SectionGraph } from './section-graph.js'
import { START_TIME } from './section-job.js'
import { emptyLayers, type SolidMasks, solidMasks } from './solid-masks.js'

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
  /** Layers below a section's top on which it has nothing to print, summed over the sections: nobody can print over them. */
  readonly empty: number
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

/** A graph in rows of numbers: a search asks of it tens of thousands of times. */
export interface PackedGraph {
  readonly time: Float64Array
  readonly a: Int32Array
  readonly b: Int32Array
  readonly cost: Float64Array
  readonly pinned: Uint8Array
  readonly solid: SolidMasks
  /** Blocks at the other end of each block's ties. */
  readonly near: readonly (readonly number[])[]
}

const packedGraphs = new WeakMap<SectionGraph, PackedGraph>()

export function packed(graph: SectionGraph): PackedGraph {
  const known = packedGraphs.get(graph)
  if (known) return known
  const { blocks, ties } = graph
  const near: number[][] = blocks.map(() => [])
  for (const { a, b } of ties) {
    near[a]!.push(b)
    near[b]!.push(a)
  }
  const made = {
    near,
    time: Float64Array.from(blocks, block => block.time),
    a: Int32Array.from(ties, tie => tie.a),
    b: Int32Array.from(ties, tie => tie.b),
    cost: Float64Array.from(ties, tie => tie.cut.cost),
    pinned: Uint8Array.from(ties, tie => (tie.cut.isPinned ? 1 : 0)),
    solid: solidMasks(blocks.map(block => block.solid)),
  }
  packedGraphs.set(graph, made)
  return made
}

export function partTimes(
  graph: SectionGraph,
  partition: Partition,
  startTime: Seconds = START_TIME,
): Seconds[] {
  const { time, a, b } = packed(graph)
  const times: Seconds[] = []
  for (let count = partCount(partition); count > 0; count--) times.push(startTime)
  for (let i = 0; i < partition.length; i++) times[partition[i]!]! += time[i]!
  for (let i = 0; i < a.length; i++) {
    const pa = partition[a[i]!]!
    const pb = partition[b[i]!]!
    if (pa === pb) continue
    times[pa]! += startTime / 2
    times[pb]! += startTime / 2
  }
  return times
}

/** One pass over the ties, one over the parts. */
export function scorePartition(
  graph: SectionGraph,
  partition: Partition,
  aims: PartitionAims,
): PartitionScore {
  const times = partTimes(graph, partition, aims.startTime)
  const { a, b, cost, pinned, solid } = packed(graph)
  let joints = 0
  let uncutPins = 0
  for (let i = 0; i < a.length; i++) {
    if (partition[a[i]!] !== partition[b[i]!]) joints += cost[i]!
    else uncutPins += pinned[i]!
  }
  let outside = 0
  let most = Number.NEGATIVE_INFINITY
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < times.length; i++) {
    const time = times[i]!
    outside += Math.max(0, time - aims.most) + Math.max(0, aims.least - time)
    most = Math.max(most, time)
    least = Math.min(least, time)
  }
  return {
    empty: emptyLayers(solid, partition, times.length),
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
    a.empty - b.empty ||
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
  const { a, b, time } = packed(graph)
  const parent = new Int32Array(time.length)
  for (let i = 0; i < parent.length; i++) parent[i] = i
  for (let i = 0; i < a.length; i++) if (isJoined(i)) join(parent, a[i]!, b[i]!)
  return partsOf(parent)
}

/** The pieces that the parts of a division fall into where they do not hang together. */
export function splitApart(graph: SectionGraph, partition: Partition): Partition {
  const { a, b, time } = packed(graph)
  const parent = new Int32Array(time.length)
  for (let i = 0; i < parent.length; i++) parent[i] = i
  for (let i = 0; i < a.length; i++) if (partition[a[i]!] === partition[b[i]!]) join(parent, a[i]!, b[i]!)
  return partsOf(parent)
}

function join(parent: Int32Array, a: number, b: number): void {
  const ra = rootOf(parent, a)
  const rb = rootOf(parent, b)
  if (ra < rb) parent[rb] = ra
  else parent[ra] = rb
}

/** The root of a part is its first block, so parts are numbered by the first block they hold: see `normalised`. */
function partsOf(parent: Int32Array): Partition {
  const part: number[] = []
  let count = 0
  for (let i = 0; i < parent.length; i++) {
    const root = rootOf(parent, i)
    part.push(root === i ? count++ : part[root]!)
  }
  return part
}

function rootOf(parent: Int32Array, i: number): number {
  let root = i
  while (parent[root] !== root) {
    const above = parent[parent[root]!]!
    parent[root] = above
    root = above
  }
  return root
}

function partCount(partition: Partition): number {
  let last = -1
  for (let i = 0; i < partition.length; i++) if (partition[i]! > last) last = partition[i]!
  return last + 1
}
