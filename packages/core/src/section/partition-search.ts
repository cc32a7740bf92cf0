import {
  compareScores,
  connectedParts,
  type Partition,
  type PartitionAims,
  packed,
  scorePartition,
  splitApart,
} from './partition.js'
import { changed, changesAt, hopeless } from './partition-change.js'
import type { SectionGraph } from './section-graph.js'

/** Up to this many cuts every combination is tried. */
export const EXHAUSTIVE_TIES = 14

/** Best division, every combination of cuts tried: proven, for plans with few cuts. */
export function bestOfAll(graph: SectionGraph, aims: PartitionAims): Partition {
  const count = graph.ties.length
  let best = connectedParts(graph, () => true)
  let bestScore = scorePartition(graph, best, aims)
  for (let mask = 0; mask < 2 ** count - 1; mask++) {
    const partition = connectedParts(graph, tie => ((mask >> tie) & 1) === 1)
    const score = scorePartition(graph, partition, aims)
    if (compareScores(score, bestScore) < 0) {
      best = partition
      bestScore = score
    }
  }
  return best
}

/**
 * A good division of a large plan: parts grown along the plan from several far ends to an even share of the time, for
 * several numbers of parts, then bettered by handing over blocks, swapping, merging and splitting while that helps.
 */
export function bestOfMany(graph: SectionGraph, aims: PartitionAims): Partition {
  const total = graph.blocks.reduce((sum, block) => sum + block.time, 0)
  const fewest = Math.max(aims.sectionsLeast ?? 1, Math.ceil(total / aims.most))
  const spare = graph.blocks.length > MANY_BLOCKS ? [0, 1] : [0, 1, 2, 3]
  const counts = spare.map(more => fewest + more).filter(count => count <= graph.blocks.length)
  const starts = [
    connectedParts(graph, () => true),
    ...counts.flatMap(count => grownPartitions(graph, count, total)),
  ]
  // Several ends often grow the same parts: each start is bettered once.
  const distinct = new Map(starts.map(start => splitApart(graph, start)).map(start => [start.join(), start]))
  const known = new Map<string, Partition>()
  const settled = [...distinct.values()].map(start => improved(graph, start, aims, known))
  return settled.reduce((best, next) =>
    compareScores(scorePartition(graph, next, aims), scorePartition(graph, best, aims)) < 0 ? next : best,
  )
}

function grownPartitions(graph: SectionGraph, count: number, total: number): readonly Partition[] {
  const ends = graph.blocks.length > MANY_BLOCKS ? farEnds(graph).slice(0, 2) : farEnds(graph)
  return ends.map(end => grow(graph, end, total / count))
}

/** Blocks at the edges of the plan, where growing may begin. */
function farEnds(graph: SectionGraph): readonly number[] {
  const best = (of: (i: number) => number) =>
    graph.blocks.reduce((far, _, i) => (of(i) > of(far) ? i : far), 0)
  const at = (i: number) => graph.blocks[i]!
  const ends = [
    best(i => at(i).x),
    best(i => -at(i).x),
    best(i => at(i).y),
    best(i => -at(i).y),
    best(i => at(i).x + at(i).y),
    best(i => -at(i).x - at(i).y),
    best(i => at(i).x - at(i).y),
    best(i => at(i).y - at(i).x),
  ]
  return [...new Set(ends)]
}

/** Fills part after part to the share, always taking the open neighbour with the fewest open neighbours of its own. */
function grow(graph: SectionGraph, start: number, share: number): Partition {
  const { near, time: times } = packed(graph)
  const part: number[] = graph.blocks.map(() => -1)
  const openAround = near.map(around => around.length)
  /** By block, one more than the part that last came beside it. */
  const beside = new Int32Array(part.length)
  const fewestOpen = (isWanted: (block: number) => boolean) => {
    let found: number | undefined
    for (let i = 0; i < part.length; i++)
      if (part[i] === -1 && isWanted(i) && (found === undefined || openAround[i]! < openAround[found]!))
        found = i
    return found
  }
  let next: number | undefined = start
  for (let number = 0; next !== undefined; number++) {
    let time = 0
    let candidate: number | undefined = next
    while (candidate !== undefined && (time === 0 || time + times[candidate]! / 2 <= share)) {
      part[candidate] = number
      time += times[candidate]!
      for (const other of near[candidate]!) {
        openAround[other]!--
        beside[other] = number + 1
      }
      candidate = fewestOpen(i => beside[i] === number + 1)
    }
    next = fewestOpen(() => true)
  }
  return part
}

/** Beyond so many blocks the search takes what helps at once and starts from fewer places: its time then grows with the plan. */
const MANY_BLOCKS = 120

function improved(
  graph: SectionGraph,
  start: Partition,
  aims: PartitionAims,
  known: Map<string, Partition>,
): Partition {
  return graph.blocks.length > MANY_BLOCKS ? swept(graph, start, aims) : descended(graph, start, aims, known)
}

/** Takes the best single change until none helps. `known`: where earlier descents ended, by where they came past. */
function descended(
  graph: SectionGraph,
  start: Partition,
  aims: PartitionAims,
  known: Map<string, Partition>,
): Partition {
  let best = start
  let score = scorePartition(graph, best, aims)
  const past: string[] = []
  for (let round = 0; round < 10 * graph.blocks.length; round++) {
    const key = best.join()
    const end = known.get(key)
    if (end) {
      best = end
      break
    }
    past.push(key)
    let found: Partition | undefined
    const isHopeless = hopeless(graph, best, aims)
    for (let tie = 0; tie < graph.ties.length; tie++)
      for (const change of changesAt(graph, best, tie)) {
        if (isHopeless(change, score)) continue
        const next = changed(graph, best, change)
        const nextScore = scorePartition(graph, next, aims)
        if (compareScores(nextScore, score) >= 0) continue
        found = next
        score = nextScore
      }
    if (!found) break
    best = found
  }
  for (const key of past) known.set(key, best)
  return best
}

/** Tie after tie, takes every change that helps; again until a sweep brings nothing, ten times at most. */
function swept(graph: SectionGraph, start: Partition, aims: PartitionAims): Partition {
  let best = start
  let score = scorePartition(graph, best, aims)
  for (let sweep = 0; sweep < 10; sweep++) {
    const before = score
    for (let tie = 0; tie < graph.ties.length; tie++)
      for (const change of changesAt(graph, best, tie)) {
        const next = changed(graph, best, change)
        const nextScore = scorePartition(graph, next, aims)
        if (compareScores(nextScore, score) >= 0) continue
        best = next
        score = nextScore
        break
      }
    if (score === before) break
  }
  return best
}
