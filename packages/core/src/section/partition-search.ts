import {
  compareScores,
  connectedParts,
  normalised,
  type Partition,
  type PartitionAims,
  scorePartition,
} from './partition.js'
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
  const settled = [...distinct.values()].map(start => improved(graph, start, aims))
  return settled.reduce((best, next) =>
    compareScores(scorePartition(graph, next, aims), scorePartition(graph, best, aims)) < 0 ? next : best,
  )
}

function grownPartitions(graph: SectionGraph, count: number, total: number): readonly Partition[] {
  const near = neighbours(graph)
  const ends = graph.blocks.length > MANY_BLOCKS ? farEnds(graph).slice(0, 2) : farEnds(graph)
  return ends.map(end => grow(graph, near, end, total / count))
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

function neighbours(graph: SectionGraph): readonly (readonly number[])[] {
  const near: number[][] = graph.blocks.map(() => [])
  for (const { a, b } of graph.ties) {
    near[a]!.push(b)
    near[b]!.push(a)
  }
  return near
}

/** Fills part after part to the share, always taking the open neighbour with the fewest open neighbours of its own. */
function grow(
  graph: SectionGraph,
  near: readonly (readonly number[])[],
  start: number,
  share: number,
): Partition {
  const part: number[] = new Array(graph.blocks.length).fill(-1)
  const isOpen = (i: number) => part[i] === -1
  const openAround = (i: number) => near[i]!.filter(isOpen).length
  let next: number | undefined = start
  for (let number = 0; next !== undefined; number++) {
    let time = 0
    let candidate: number | undefined = next
    while (candidate !== undefined && (time === 0 || time + graph.blocks[candidate]!.time / 2 <= share)) {
      part[candidate] = number
      time += graph.blocks[candidate]!.time
      const rim: readonly number[] = part.flatMap((p, i) => (p === number ? near[i]!.filter(isOpen) : []))
      candidate = [...rim].sort((a, b) => openAround(a) - openAround(b) || a - b)[0]
    }
    const left = part.flatMap((_, i) => (isOpen(i) ? [i] : []))
    next = left.sort((a, b) => openAround(a) - openAround(b) || a - b)[0]
  }
  return part
}

/** Unconnected pieces of a part become parts of their own. */
const splitApart = (graph: SectionGraph, partition: Partition): Partition =>
  connectedParts(graph, tie => partition[graph.ties[tie]!.a] === partition[graph.ties[tie]!.b])

/** Beyond so many blocks the search takes what helps at once and starts from fewer places: its time then grows with the plan. */
const MANY_BLOCKS = 120

function improved(graph: SectionGraph, start: Partition, aims: PartitionAims): Partition {
  return graph.blocks.length > MANY_BLOCKS ? swept(graph, start, aims) : descended(graph, start, aims)
}

/** Takes the best single change until none helps. */
function descended(graph: SectionGraph, start: Partition, aims: PartitionAims): Partition {
  let best = start
  let score = scorePartition(graph, best, aims)
  for (let round = 0; round < 10 * graph.blocks.length; round++) {
    let found: Partition | undefined
    for (let tie = 0; tie < graph.ties.length; tie++)
      for (const next of changesAt(graph, best, tie)) {
        const nextScore = scorePartition(graph, next, aims)
        if (compareScores(nextScore, score) >= 0) continue
        found = next
        score = nextScore
      }
    if (!found) break
    best = found
  }
  return best
}

/** Tie after tie, takes every change that helps; again until a sweep brings nothing, ten times at most. */
function swept(graph: SectionGraph, start: Partition, aims: PartitionAims): Partition {
  let best = start
  let score = scorePartition(graph, best, aims)
  for (let sweep = 0; sweep < 10; sweep++) {
    const before = score
    for (let tie = 0; tie < graph.ties.length; tie++)
      for (const next of changesAt(graph, best, tie)) {
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

/** One block handed over a tie, two parts merged, or a part cut along the tie. */
function* changesAt(graph: SectionGraph, partition: Partition, index: number): Iterable<Partition> {
  const { a, b } = graph.ties[index]!
  const [pa, pb] = [partition[a]!, partition[b]!]
  const handedOver = (block: number, to: number) => {
    const moved = partition.slice()
    moved[block] = to
    return splitApart(graph, moved)
  }
  if (pa !== pb) {
    yield normalised(partition.map(part => (part === pb ? pa : part)))
    yield handedOver(b, pa)
    yield handedOver(a, pb)
  } else {
    // a number no part has
    yield handedOver(b, partition.length)
    yield connectedParts(
      graph,
      tie => tie !== index && partition[graph.ties[tie]!.a] === partition[graph.ties[tie]!.b],
    )
  }
}
