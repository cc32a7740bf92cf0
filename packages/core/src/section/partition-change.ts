import type { Seconds } from '../quantity/index.js'
import {
  connectedParts,
  normalised,
  type Partition,
  type PartitionAims,
  type PartitionScore,
  packed,
  partTimes,
  scorePartition,
  splitApart,
} from './partition.js'
import type { SectionGraph } from './section-graph.js'
import { START_TIME } from './section-job.js'
import { emptyByPart } from './solid-masks.js'

/** A small step from one division to another: two parts merged, a block handed to a part, a part cut along a tie. */
export type PartitionChange =
  | { readonly kind: 'merge'; readonly a: number; readonly b: number }
  | { readonly kind: 'hand'; readonly block: number; readonly to: number }
  | { readonly kind: 'cut'; readonly tie: number }

/** What may be done at a tie. */
export function changesAt(
  graph: SectionGraph,
  partition: Partition,
  tie: number,
): readonly PartitionChange[] {
  const { a, b } = graph.ties[tie]!
  const pa = partition[a]!
  const pb = partition[b]!
  if (pa !== pb)
    return [
      { kind: 'merge', a: pa, b: pb },
      { kind: 'hand', block: b, to: pa },
      { kind: 'hand', block: a, to: pb },
    ]
  return [
    // a number no part has
    { kind: 'hand', block: b, to: partition.length },
    { kind: 'cut', tie },
  ]
}

export function changed(graph: SectionGraph, partition: Partition, change: PartitionChange): Partition {
  switch (change.kind) {
    case 'merge':
      return normalised(partition.map(part => (part === change.b ? change.a : part)))
    case 'hand': {
      const moved = partition.slice()
      moved[change.block] = change.to
      return splitApart(graph, moved)
    }
    case 'cut': {
      const { a, b } = packed(graph)
      return connectedParts(graph, tie => tie !== change.tie && partition[a[tie]!] === partition[b[tie]!])
    }
  }
}

/**
 * Tells changes of one division that cannot make a better one than `best`, without making them: most steps only push a part
 * further over what is allowed. A bound from below, so that nothing is lost.
 */
export function hopeless(graph: SectionGraph, partition: Partition, aims: PartitionAims) {
  const { a, b, near, pinned, solid, time } = packed(graph)
  const isPinned = pinned.some(pin => pin === 1)
  const startTime = aims.startTime ?? START_TIME
  const times = partTimes(graph, partition, startTime)
  const { outside } = scorePartition(graph, partition, aims)
  const outsideOf = (part: Seconds) => Math.max(0, part - aims.most) + Math.max(0, aims.least - part)
  const merged = (pa: number, pb: number) => {
    let ties = 0
    for (let i = 0; i < a.length; i++) {
      const [from, to] = [partition[a[i]!], partition[b[i]!]]
      if ((from === pa && to === pb) || (from === pb && to === pa)) ties++
    }
    return times[pa]! + times[pb]! - (1 + ties) * startTime
  }
  const withBlock = (block: number, to: number) => {
    let ties = 0
    for (const other of near[block]!) ties += partition[other] === to ? -1 : 1
    return times[to]! + time[block]! + (ties * startTime) / 2
  }
  const changedOutside = (pa: number, pb: number, part: Seconds) =>
    outside - outsideOf(times[pa]!) - outsideOf(times[pb]!) + outsideOf(part)
  const empty = emptyByPart(solid, partition, times.length)
  const allEmpty = empty.each.reduce((sum, layers) => sum + layers, 0)
  // The part that gives a block away may come to have none: nothing is counted of it.
  const leastEmpty = (change: PartitionChange): number => {
    const of = (part: number) => empty.each[part]!
    switch (change.kind) {
      case 'merge':
        return allEmpty - of(change.a) - of(change.b) + empty.merged(change.a, change.b)
      case 'cut':
        return allEmpty - of(partition[a[change.tie]!]!)
      case 'hand': {
        const rest = allEmpty - of(partition[change.block]!)
        if (change.to === partition.length) return rest + empty.ofBlock(change.block)
        return rest - of(change.to) + empty.withBlock(change.to, change.block)
      }
    }
  }
  const isOutside = (change: PartitionChange, best: PartitionScore): boolean => {
    // One section more helps only where layer times are outside, or sections are missing.
    if (change.kind === 'cut' || (change.kind === 'hand' && change.to === partition.length))
      return best.outside < 0.1 && best.missing === 0
    const outsideLeast =
      change.kind === 'merge'
        ? changedOutside(change.a, change.b, merged(change.a, change.b))
        : changedOutside(partition[change.block]!, change.to, withBlock(change.block, change.to))
    return outsideLeast > best.outside + 0.1 + 1e-6
  }
  return (change: PartitionChange, best: PartitionScore): boolean => {
    if (isPinned) return false
    const least = leastEmpty(change)
    return least > best.empty || (least === best.empty && isOutside(change, best))
  }
}
